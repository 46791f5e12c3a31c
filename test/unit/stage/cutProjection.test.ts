import { Matrix4, Vector3, Vector4 } from 'three';
import { describe, expect, it } from 'vitest';
import { extents } from '../../../src/lib/stage/fit';
import { rotationOf } from '../../../src/lib/stage/stand';
import { cutProjection } from '../../../src/lib/stage/tools/cutProjection';
import { frustum } from '../../../src/lib/stage/viewport';

const bounds = { min: [-6, -12, -5], max: [7, 20, 5] } as const;

function setUp(tilt_deg: number, yaw_deg = 25) {
	const { radius_mm } = extents(bounds);
	const f = frustum({ left: -200, right: 200, top: 200, bottom: -200 }, 10, radius_mm);
	const projection = new Matrix4().makePerspective(f.left, f.right, f.top, f.bottom, f.near, f.far);
	const stand = new Matrix4()
		.makeTranslation(0, 0, -f.distance)
		.multiply(rotationOf({ yaw_deg, tilt_deg, zoom: 1 }))
		.multiply(new Matrix4().makeTranslation(-0.5, -4, 0));
	return { projection, stand };
}

/** Where a point of the tooth ends up: x, y, depth after division. */
function seen(projection: Matrix4, stand: Matrix4, point: Vector3) {
	const p = new Vector4(point.x, point.y, point.z, 1).applyMatrix4(stand).applyMatrix4(projection);
	return { x: p.x / p.w, y: p.y / p.w, depth: p.z / p.w };
}

describe('cutProjection', () => {
	const grid: Vector3[] = [];
	for (const x of [-6, -2, 3, 7])
		for (const y of [-12, -3, 4.9, 5.1, 12, 20]) for (const z of [-5, 0, 5]) grid.push(new Vector3(x, y, z));

	for (const tilt_deg of [-90, -40, -3, 0, 10, 38, 90])
		it(`keeps what lies below the cut and nothing above, tilted by ${tilt_deg} degrees`, () => {
			const { projection, stand } = setUp(tilt_deg);
			const plain = projection.clone();
			cutProjection(projection, stand, 5, bounds);
			for (const point of grid) {
				const { x, y, depth } = seen(projection, stand, point);
				expect(depth >= -1 && depth <= 1, `${point.toArray()}`).toBe(point.y <= 5);
				// the picture itself does not move
				const before = seen(plain, stand, point);
				expect(x).toBeCloseTo(before.x, 9);
				expect(y).toBeCloseTo(before.y, 9);
			}
		});

	it('along a line of sight what is nearer still lies before what is farther', () => {
		for (const tilt_deg of [-60, -5, 5, 60]) {
			const { projection, stand } = setUp(tilt_deg);
			cutProjection(projection, stand, 5, bounds);
			const back = stand.clone().invert();
			for (const to of [new Vector3(1, -6, 0), new Vector3(-3, -2, 2)]) {
				const end = to.clone().applyMatrix4(stand);
				const depths = [0.96, 0.98, 1, 1.02, 1.04]
					.map((t) => end.clone().multiplyScalar(t).applyMatrix4(back))
					.map((p) => seen(projection, stand, p).depth);
				for (let i = 1; i < depths.length; i++) expect(depths[i] - depths[i - 1]).toBeGreaterThan(1e-6);
			}
		}
	});

	it('tells whether the eye looks at the cut face', () => {
		const looks = (tilt_deg: number) => {
			const { projection, stand } = setUp(tilt_deg);
			return cutProjection(projection, stand, 5, bounds);
		};
		// tip towards the viewer shows the face, tip away hides it
		expect(looks(40)).toBe(true);
		expect(looks(-40)).toBe(false);
	});
});
