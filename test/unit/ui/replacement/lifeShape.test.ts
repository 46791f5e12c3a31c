import { describe, expect, it } from 'vitest';
import { ARRANGEMENTS } from '../../../../src/lib/domain/replacement/lifeForm';
import { lifeShape } from '../../../../src/lib/ui/replacement/lifeShape';

describe('lifeShape', () => {
	it('gives each part a name of its own at every moment, and keeps the jaw the same object', () => {
		for (const arrangement of ARRANGEMENTS) {
			const jaws = new Set<object>();
			for (let u = 0; u <= 1; u += 0.05) {
				const { parts } = lifeShape(arrangement, u, true);
				expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
				const jaw = parts.find(({ id }) => id === 'jaw');
				if (jaw) jaws.add(jaw.mesh);
				expect(parts.some(({ id }) => id === 'tooth')).toBe(true);
			}
			expect(jaws.size).toBe(1);
		}
	});

	it('keeps every tooth that stands in the jaw inside the room made for it', () => {
		for (const arrangement of ARRANGEMENTS)
			for (let u = 0; u <= 1; u += 0.1) {
				const { parts, bounds } = lifeShape(arrangement, u, false);
				for (const { id, mesh, place, opacity } of parts) {
					if (!place || (opacity ?? 1) < 1) continue; // one that falls drops out of sight
					const min = [Infinity, Infinity, Infinity];
					const max = [-Infinity, -Infinity, -Infinity];
					for (let i = 0; i < mesh.positions.length; i += 3)
						for (const k of [0, 1, 2]) {
							const [x, y, z] = mesh.positions.subarray(i, i + 3);
							const at = place[k] * x + place[4 + k] * y + place[8 + k] * z + place[12 + k];
							min[k] = Math.min(min[k], at);
							max[k] = Math.max(max[k], at);
						}
					for (const k of [0, 1, 2]) {
						expect(min[k], `${arrangement} ${u} ${id}`).toBeGreaterThanOrEqual(bounds.min[k] - 1e-3);
						expect(max[k], `${arrangement} ${u} ${id}`).toBeLessThanOrEqual(bounds.max[k] + 1e-3);
					}
				}
			}
	}, 60_000);
});
