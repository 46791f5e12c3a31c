import { BufferAttribute, BufferGeometry } from 'three';
import { expect, it } from 'vitest';
import { vec3 } from '../../../src/lib/domain/vec3';
import { createPicker } from '../../../src/lib/stage/pick';
import { caliperAside } from '../../../src/lib/ui/quiz/caliperAside';
import { caliperStart } from '../../../src/lib/ui/tools/caliperStart';
import { ellipticCone } from '../mesh/shapes';

function viewOf(height: number, lean: number) {
	const { positions, indices } = ellipticCone(6, 4, [lean, height, 0]);
	const geometry = new BufferGeometry();
	geometry.setAttribute('position', new BufferAttribute(positions, 3));
	geometry.setIndex(new BufferAttribute(indices, 1));
	const picker = createPicker(geometry);
	return {
		middleAt: picker.middleAt,
		outermost: picker.outermost,
		snap: picker.nearest,
	};
}

it('a caliper begins from the tip to the back end of the base: the height of a leaning crown within 4 %', () => {
	for (const lean of [0, 5, -4]) {
		const [tip, base] = caliperStart(viewOf(24, lean), 24)!;
		// CH: straight from the apex to the distal base point
		const expected = Math.hypot(24, 6 - lean);
		expect(Math.abs(vec3.distance(tip.point, base.point) / expected - 1)).toBeLessThan(0.04);
	}
});

it('an empty view has no caliper', () => {
	const none = { middleAt: () => null, outermost: () => null, snap: () => null };
	expect(caliperStart(none, 20)).toBeNull();
});

it('the caliper of a question begins where nothing asked for is measured: far from the height of the crown', () => {
	for (const lean of [0, 5, -4]) {
		const [upper, lower] = caliperAside(viewOf(24, lean), 24)!;
		expect(vec3.distance(upper.point, lower.point) / 24).toBeLessThan(0.5);
		expect(upper.point[1]).toBeGreaterThan(lower.point[1]);
	}
	expect(caliperAside({ middleAt: () => null, outermost: () => null, snap: () => null }, 20)).toBeNull();
});
