import { BufferAttribute, BufferGeometry } from 'three';
import { expect, it } from 'vitest';
import { createPicker } from '../../../src/lib/stage/pick';
import { partHit, touchedPlace } from '../../../src/lib/ui/quiz/partHit';
import { ellipticCone } from '../mesh/shapes';

const HEIGHT_mm = 24;
function cone() {
	const { positions, indices } = ellipticCone(6, 4, [0, HEIGHT_mm, 0]);
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	geometry.setIndex(new BufferAttribute(indices, 1));
	const { middleAt, outermost } = createPicker(geometry);
	return { middleAt, outermost } as unknown as Parameters<typeof touchedPlace>[0];
}

it('the tip has a place, though no section', () => {
	const hit = partHit(cone(), { at: 1, where_deg: 90 }, HEIGHT_mm)!;
	expect(hit.point[1] / HEIGHT_mm).toBeGreaterThan(0.96);
});

it('a place on the surface, touched, is the place that was meant', () => {
	for (const at of [0.1, 0.5, 0.8])
		for (const where_deg of [0, 45, 130, 270]) {
			const hit = partHit(cone(), { at, where_deg }, HEIGHT_mm)!;
			const touched = touchedPlace(cone(), hit, HEIGHT_mm);
			expect(touched.at).toBeCloseTo(at, 1);
			const turn = Math.abs(((touched.where_deg - where_deg + 540) % 360) - 180);
			expect(turn).toBeLessThan(12);
		}
});
