import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readScan } from '../../../src/lib/server/scan/readScan';
import { ellipticCone } from '../mesh/shapes';
import { dracoGlb, glb, gltfDocument, meshoptGlb } from './gltfWriters';
import { asPolygons, obj, ply, polygonCone, stlBinary, stlText, text } from './writers';

const SEED = 20_031_214;
const RUNS = 6000;

const cone = ellipticCone(4, 3, [1, 12, 0], 10, 5);
const small = { ...cone, positions: cone.positions.map((v) => v / 1000) };
const polygons = polygonCone(4, 12, 10, 4);
const valid: [string, Uint8Array][] = [
	['a.stl', stlBinary(cone)],
	['a.stl', text(stlText(cone))],
	['a.ply', ply(polygons, { encoding: 'ascii' })],
	['a.ply', ply(polygons, { encoding: 'binary_little_endian', burdened: true })],
	['a.ply', ply(polygons, { encoding: 'binary_big_endian', facesFirst: true })],
	['a.obj', text(obj(polygons, { negative: true }))],
	['a.obj', text(obj(asPolygons(cone), { slashes: true, objects: 3 }))],
	['a.glb', await glb(gltfDocument([{ mesh: small, sparse: true }], 3))],
	['a.glb', await dracoGlb(small, 'edgebreaker')],
	['a.glb', await dracoGlb(small, 'sequential')],
	['a.glb', await meshoptGlb(small, true)],
];

/** One thing done to a file; places are shares of its length. */
type Change =
	| { kind: 'set'; at: number; value: number }
	| { kind: 'cut'; from: number; length: number }
	| { kind: 'repeat'; from: number; length: number }
	| { kind: 'number'; at: number; value: number }
	| { kind: 'digits'; at: number; value: string };

const share = fc.double({ min: 0, max: 1, noNaN: true });
const change: fc.Arbitrary<Change> = fc.oneof(
	fc.record({ kind: fc.constant('set' as const), at: share, value: fc.nat(255) }),
	fc.record({ kind: fc.constant('cut' as const), from: share, length: fc.nat(200) }),
	fc.record({ kind: fc.constant('repeat' as const), from: share, length: fc.nat(200) }),
	fc.record({
		kind: fc.constant('number' as const),
		at: share,
		value: fc.constantFrom(0, 1, 2 ** 16, 2 ** 24, 2 ** 31 - 1, 2 ** 31, 2 ** 32 - 1, 0x7fc00000, 0x7f800000),
	}),
	fc.record({
		kind: fc.constant('digits' as const),
		at: share,
		value: fc.constantFrom(
			'99999999',
			'-1',
			'1e999',
			'nan',
			'0',
			'2147483648',
			'{',
			']',
			'"',
			'\r',
			'\n\n',
			'/',
		),
	}),
);

function apply(bytes: Uint8Array, one: Change): Uint8Array {
	if (bytes.length === 0) return bytes;
	const place = (at: number) => Math.min(bytes.length - 1, Math.floor(at * bytes.length));
	const spliced = (from: number, to: number, between: Uint8Array) =>
		new Uint8Array(Buffer.concat([bytes.subarray(0, from), between, bytes.subarray(to)]));
	switch (one.kind) {
		case 'set': {
			const copy = bytes.slice();
			copy[place(one.at)] = one.value;
			return copy;
		}
		case 'cut':
			return spliced(place(one.from), place(one.from) + one.length, new Uint8Array(0));
		case 'repeat': {
			const from = place(one.from);
			return spliced(from, from, bytes.slice(from, from + one.length));
		}
		case 'number': {
			const copy = bytes.slice();
			const at = place(one.at);
			if (at + 4 <= copy.length) new DataView(copy.buffer).setUint32(at, one.value, true);
			return copy;
		}
		case 'digits':
			return spliced(place(one.at), place(one.at) + one.value.length, text(one.value));
	}
}

describe('readScan', () => {
	it(`takes ${RUNS} damaged files without a throw, a wait or a rush of memory (seed ${SEED})`, async () => {
		let read = 0;
		let refused = 0;
		const before = process.memoryUsage.rss();
		await fc.assert(
			fc.asyncProperty(
				fc.constantFrom(...valid),
				fc.array(change, { minLength: 1, maxLength: 4 }),
				async ([file, bytes], changes) => {
					const start = process.cpuUsage();
					const result = await readScan(changes.reduce(apply, bytes), file, 'mm');
					const { user, system } = process.cpuUsage(start);
					expect((user + system) / 1000).toBeLessThan(2000);
					if (!result.ok) {
						refused++;
						expect(result.problem.message).toMatch(/^[A-Z].*\.$/s);
						return;
					}
					read++;
					const { positions, indices } = result.value.mesh;
					const corners = positions.length / 3;
					expect(indices.length % 3).toBe(0);
					expect(indices.length).toBeGreaterThan(0);
					expect(indices.every((corner) => corner < corners)).toBe(true);
					expect(positions.every(Number.isFinite)).toBe(true);
				},
			),
			{ seed: SEED, numRuns: RUNS },
		);
		// both ways out were really taken
		expect(Math.min(read, refused)).toBeGreaterThan(RUNS / 20);
		expect((process.memoryUsage.rss() - before) / 2 ** 20).toBeLessThan(900);
	});

	it(`reads bytes at random as nothing, whatever they are called (seed ${SEED})`, async () => {
		await fc.assert(
			fc.asyncProperty(
				fc.constantFrom('a.stl', 'a.ply', 'a.obj', 'a.glb', 'a.gltf'),
				fc.uint8Array({ maxLength: 400 }),
				async (file, bytes) => {
					const result = await readScan(bytes, file, 'mm');
					expect(result.ok).toBe(false);
				},
			),
			{ seed: SEED, numRuns: 500 },
		);
	});
});
