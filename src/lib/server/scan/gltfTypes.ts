import { ScanFault } from './scanProblem';

/** The part of a glTF's description that matters for triangles. Nothing in it can be relied on: see `list`, `whole`. */
export interface Gltf {
	extensionsRequired?: unknown;
	scene?: unknown;
	scenes?: unknown;
	nodes?: unknown;
	meshes?: unknown;
	accessors?: unknown;
	bufferViews?: unknown;
	buffers?: unknown;
	materials?: unknown;
	textures?: unknown;
	images?: unknown;
	samplers?: unknown;
}

export type Fields = Readonly<Record<string, unknown>>;

const wrong = (what: string) => new ScanFault('damaged', `Its description is wrong: ${what}.`);

/** A list of objects; empty when it is not there. */
export function list(value: unknown, what: string): readonly Fields[] {
	if (value === undefined) return [];
	if (!Array.isArray(value)) throw wrong(`${what} is no list`);
	return value as Fields[];
}

/** The entry that a number names. */
export function entry(all: readonly Fields[], index: unknown, what: string): Fields {
	const found = typeof index === 'number' ? all[index] : undefined;
	if (typeof found !== 'object' || found === null) {
		throw wrong(`it names ${what} number ${String(index).slice(0, 20)}, and has ${all.length} of them`);
	}
	return found;
}

/** A whole number of 0 or more. */
export function whole(value: unknown, what: string, fallback?: number): number {
	const found = value === undefined ? fallback : value;
	if (typeof found !== 'number' || !Number.isSafeInteger(found) || found < 0) {
		throw new ScanFault('count-lies', `Its description is wrong: ${what} is ${String(found).slice(0, 20)}.`);
	}
	return found;
}

/** Numbers of a list, as many as wanted. */
export function numbers(value: unknown, count: number, what: string): readonly number[] {
	if (!Array.isArray(value) || value.length !== count || !value.every((n) => typeof n === 'number')) {
		throw wrong(`${what} is not a list of ${count} numbers`);
	}
	return value as number[];
}

export function fields(value: unknown): Fields | null {
	return typeof value === 'object' && value !== null ? (value as Fields) : null;
}

/** An extension's own entry, whichever of its names is used. */
export function extension(owner: Fields, ...names: readonly string[]): Fields | null {
	const all = fields(owner.extensions);
	for (const name of names) {
		const found = all && Object.hasOwn(all, name) ? fields(all[name]) : null;
		if (found) return found;
	}
	return null;
}
