import { BufferAttribute, BufferGeometry } from 'three';
import { describe, expect, it } from 'vitest';
import { createToothMaterials } from '../../../src/lib/stage/materials';
import type { LoadedShape } from '../../../src/lib/stage/loadShape';
import { ViewCut } from '../../../src/lib/stage/tools/viewCut';
import { ellipticCone } from '../mesh/shapes';

function loaded(): LoadedShape {
	const geometry = (around: number) => {
		const { positions, indices } = ellipticCone(6, 4, [0, 20, 0], around, 30);
		const made = new BufferGeometry();
		made.setAttribute('position', new BufferAttribute(positions, 3));
		made.setIndex(new BufferAttribute(indices, 1));
		return made;
	};
	return {
		full: geometry(120),
		light: geometry(24),
		closed: true,
		centreLine: { points: new Float32Array(24) },
	};
}

describe('ViewCut', () => {
	const materials = createToothMaterials();

	it('fills the cut at its height with faces that look up', () => {
		const cut = new ViewCut(loaded(), 10, materials);
		expect(cut.meets).toBe(true);
		for (const level of ['full', 'light'] as const) {
			const face = cut.cap(level);
			const p = face.getAttribute('position');
			const index = face.index!;
			let area = 0;
			for (let i = 0; i < index.count; i += 3) {
				const [a, b, c] = [0, 1, 2].map((k) => index.getX(i + k));
				// twice the area as seen from above: z x x = y
				const up =
					(p.getZ(b) - p.getZ(a)) * (p.getX(c) - p.getX(a)) -
					(p.getX(b) - p.getX(a)) * (p.getZ(c) - p.getZ(a));
				expect(up).toBeGreaterThan(-1e-6);
				area += up / 2;
			}
			for (let i = 0; i < p.count; i++) expect(p.getY(i)).toBe(10);
			expect(area / (Math.PI * 6)).toBeCloseTo(1, level === 'full' ? 2 : 1);
		}
		expect(cut.cap('full')).toBe(cut.cap('full'));
		cut.dispose();
	});

	it('knows when the plane misses', () => {
		expect(new ViewCut(loaded(), 21, materials).meets).toBe(false);
		expect(new ViewCut(loaded(), -1, materials).meets).toBe(false);
	});
});
