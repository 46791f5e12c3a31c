import { entry, list, numbers, type Fields, type Gltf } from './gltfTypes';
import { LIMITS } from './limits';
import { ScanFault } from './scanProblem';

/** 4 x 4, column after column, as glTF writes it. */
export type Matrix = readonly number[];

const IDENTITY: Matrix = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1];

/**
 * Every mesh of the scene with its place in it. The scene is the default one, else the first; without any scene all
 * nodes that have no parent, and without nodes all meshes. Throws ScanFault for nodes that contain one another.
 */
export function placedMeshes(json: Gltf): { mesh: unknown; matrix: Matrix }[] {
	const nodes = list(json.nodes, 'nodes');
	const scenes = list(json.scenes, 'scenes');
	const placed: { mesh: unknown; matrix: Matrix }[] = [];
	if (nodes.length === 0) {
		return list(json.meshes, 'meshes').map((_, mesh) => ({ mesh, matrix: IDENTITY }));
	}
	const roots = scenes.length > 0 ? children(entry(scenes, json.scene ?? 0, 'scene').nodes) : rootsOf(nodes);
	const seen = new Set<unknown>();
	const waiting = roots.map((index) => ({ index, parent: IDENTITY, depth: 1 }));
	for (let at = waiting.pop(); at; at = waiting.pop()) {
		const node = entry(nodes, at.index, 'node');
		if (seen.has(at.index)) {
			throw new ScanFault(
				'nested-too-deep',
				'Parts of its scene contain one another, or stand in two places.',
			);
		}
		seen.add(at.index);
		if (at.depth > LIMITS.nodeDepth) {
			throw new ScanFault('nested-too-deep', `Its scene has more than ${LIMITS.nodeDepth} levels.`);
		}
		const matrix = multiplied(at.parent, localMatrix(node));
		if (node.mesh !== undefined) placed.push({ mesh: node.mesh, matrix });
		for (const index of children(node.children)) waiting.push({ index, parent: matrix, depth: at.depth + 1 });
	}
	return placed;
}

function children(value: unknown): readonly unknown[] {
	if (value === undefined) return [];
	if (!Array.isArray(value)) throw new ScanFault('damaged', 'Its description is wrong: nodes are no list.');
	return value;
}

function rootsOf(nodes: readonly Fields[]): unknown[] {
	const inner = new Set(nodes.flatMap((_, i) => children(entry(nodes, i, 'node').children)));
	return nodes.map((_, i) => i).filter((i) => !inner.has(i));
}

function localMatrix(node: Fields): Matrix {
	if (node.matrix !== undefined) return numbers(node.matrix, 16, 'a matrix');
	if (node.translation === undefined && node.rotation === undefined && node.scale === undefined)
		return IDENTITY;
	const [tx, ty, tz] = numbers(node.translation ?? [0, 0, 0], 3, 'a translation');
	const [x, y, z, w] = numbers(node.rotation ?? [0, 0, 0, 1], 4, 'a rotation');
	const [sx, sy, sz] = numbers(node.scale ?? [1, 1, 1], 3, 'a scale');
	return [
		...[(1 - 2 * (y * y + z * z)) * sx, 2 * (x * y + z * w) * sx, 2 * (x * z - y * w) * sx, 0],
		...[2 * (x * y - z * w) * sy, (1 - 2 * (x * x + z * z)) * sy, 2 * (y * z + x * w) * sy, 0],
		...[2 * (x * z + y * w) * sz, 2 * (y * z - x * w) * sz, (1 - 2 * (x * x + y * y)) * sz, 0],
		...[tx, ty, tz, 1],
	];
}

function multiplied(a: Matrix, b: Matrix): Matrix {
	if (a === IDENTITY) return b;
	if (b === IDENTITY) return a;
	const out: number[] = [];
	for (let column = 0; column < 4; column++) {
		for (let row = 0; row < 4; row++) {
			let sum = 0;
			for (let k = 0; k < 4; k++) sum += a[k * 4 + row] * b[column * 4 + k];
			out.push(sum);
		}
	}
	return out;
}
