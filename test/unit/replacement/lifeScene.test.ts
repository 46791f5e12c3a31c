import { describe, expect, it } from 'vitest';
import { volume } from '../../../src/lib/domain/mesh/volume';
import { regionIndex, triangleCount, type Region, type TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { ARRANGEMENTS, LIFE_FORMS } from '../../../src/lib/domain/replacement/lifeForm';
import { lifeScene, type LifePart } from '../../../src/lib/domain/replacement/lifeScene';
import { isClosed } from '../../../src/lib/domain/tooth/isClosed';
import type { Vec3 } from '../../../src/lib/domain/vec3';

const MOMENTS = Array.from({ length: 41 }, (_, i) => i / 40);

const regionShare = (mesh: TriMesh, region: Region): number =>
	mesh.regions!.filter((index) => index === regionIndex(region)).length / triangleCount(mesh);

const find = (parts: readonly LifePart[], id: LifePart['id']): LifePart | undefined =>
	parts.find((part) => part.id === id);

/** Vertices in the jaw's frame; only for parts that stand upright. */
function* placed({ mesh, transform }: LifePart): Generator<Vec3> {
	for (let i = 0; i < mesh.positions.length; i += 3)
		yield [
			mesh.positions[i] + transform.move_mm[0],
			mesh.positions[i + 1] + transform.move_mm[1],
			mesh.positions[i + 2] + transform.move_mm[2],
		];
}

/** How often a closed surface winds round a point: 1 inside, 0 outside (van Oosterom & Strackee 1983). */
function winding(mesh: TriMesh, [px, py, pz]: Vec3): number {
	let sum = 0;
	const { positions: p, indices } = mesh;
	for (let f = 0; f < indices.length; f += 3) {
		const v = [0, 1, 2].map((k) => {
			const i = 3 * indices[f + k];
			return [p[i] - px, p[i + 1] - py, p[i + 2] - pz] as const;
		});
		const [a, b, c] = v;
		const [la, lb, lc] = v.map((d) => Math.hypot(...d));
		const det =
			a[0] * (b[1] * c[2] - b[2] * c[1]) -
			a[1] * (b[0] * c[2] - b[2] * c[0]) +
			a[2] * (b[0] * c[1] - b[1] * c[0]);
		const dot = (s: readonly number[], t: readonly number[]) => s[0] * t[0] + s[1] * t[1] + s[2] * t[2];
		sum += 2 * Math.atan2(det, la * lb * lc + dot(a, b) * lc + dot(b, c) * la + dot(c, a) * lb);
	}
	return sum / (4 * Math.PI);
}

describe.each(ARRANGEMENTS)('lifeScene: successor %s', (arrangement) => {
	const form = LIFE_FORMS[arrangement];

	it('is made of closed, outward-facing meshes at every moment, whole and cut open', () => {
		for (const u of MOMENTS)
			for (const cut of [false, true])
				for (const { id, mesh } of lifeScene(arrangement, u, { cut }).parts) {
					expect(isClosed(mesh), `${id} at ${u}, cut ${cut}`).toBe(true);
					expect(volume(mesh), `${id} at ${u}, cut ${cut}`).toBeGreaterThan(0);
				}
	});

	it('cut open keeps the half towards distal, with a flat face of dentine', () => {
		const { parts } = lifeScene(arrangement, 0.9, { cut: true });
		const { mesh } = find(parts, 'tooth')!;
		let least = Infinity;
		for (let i = 0; i < mesh.positions.length; i += 3) least = Math.min(least, mesh.positions[i]);
		expect(least).toBeCloseTo(0, 0);
		expect(regionShare(mesh, 'dentine')).toBeGreaterThan(0.05);
	});

	it('a successor lies nowhere inside the tooth above it', () => {
		for (const u of MOMENTS) {
			const { parts } = lifeScene(arrangement, u);
			for (const [lower, upper] of [
				['old', 'older'],
				['tooth', 'old'],
				['next', 'tooth'],
				['afterNext', 'next'],
			] as const) {
				const [below, above] = [find(parts, lower), find(parts, upper)];
				if (!below || !above || above.life > 1) continue;
				const { move_mm } = above.transform;
				let [inside, seen] = [0, 0];
				let k = 0;
				for (const [x, y, z] of placed(below)) {
					if (k++ % 23 !== 0) continue;
					seen++;
					if (winding(above.mesh, [x - move_mm[0], y - move_mm[1], z - move_mm[2]]) > 0.5) inside++;
				}
				expect(inside / seen, `${lower} in ${upper} at ${u}`).toBe(0);
			}
		}
	});

	it('only a tooth that has erupted has enamel above the gum, and it loses its root before it falls', () => {
		for (const u of MOMENTS) {
			const tooth = find(lifeScene(arrangement, u).parts, 'tooth')!;
			let top = -Infinity;
			for (const [, y] of placed(tooth)) top = Math.max(top, y);
			if (tooth.stage <= 2) expect(top).toBeLessThan(0.16 * form.crownHeight_mm);
			if (tooth.stage === 5) expect(top).toBeGreaterThan(0.7 * form.crownHeight_mm);
		}
		const depth = (u: number) => {
			const { mesh } = find(lifeScene(arrangement, u).parts, 'tooth')!;
			let low = Infinity;
			for (let i = 1; i < mesh.positions.length; i += 3) low = Math.min(low, mesh.positions[i]);
			return -low;
		};
		const depths = MOMENTS.filter((u) => u > 1 - form.share).map(depth);
		expect(Math.max(...depths)).toBeGreaterThan(0.7 * form.rootLength_mm);
		expect(depth(1)).toBeLessThan(0.25 * form.rootLength_mm);
	});

	it('wears facet by facet while it is in use, and never before', () => {
		const worn = MOMENTS.map((u) =>
			regionShare(find(lifeScene(arrangement, u).parts, 'tooth')!.mesh, 'facet'),
		);
		const erupted = MOMENTS.findIndex((u) => u >= 1 - form.share);
		expect(Math.max(...worn.slice(0, erupted + 1))).toBe(0);
		expect(worn[40]).toBeGreaterThan(0);
	});

	it('eats into the old root only once the successor stands in its pit', () => {
		const pits = (u: number) => {
			const { parts } = lifeScene(arrangement, u);
			return regionShare(find(parts, 'old')!.mesh, 'pit');
		};
		const below = 1 - form.share;
		expect(pits(0.3 * below)).toBe(0);
		expect(pits(0.97 * below)).toBeGreaterThan(0.02);
		const left = (u: number) => volume(find(lifeScene(arrangement, u).parts, 'old')!.mesh);
		expect(left(0.99 * below)).toBeLessThan(0.8 * left(0.7 * below));
	});

	it('is the same for the same moment', () => {
		expect(lifeScene(arrangement, 0.37)).toEqual(lifeScene(arrangement, 0.37));
	});
});
