import { describe, expect, it } from 'vitest';
import { heapSize } from '../../../../src/lib/domain/replacement/heapSize';
import { heapScale, type HeapPicture } from '../../../../src/lib/ui/replacement/drawHeap';

const picture = (count: number, beside: 'child' | 'hand'): HeapPicture => ({
	width: 900,
	height: 600,
	count,
	heap: heapSize(count, 800),
	tooth: { height_mm: 25, length_mm: 12 },
	beside,
	colours: { bone: '', amber: '', seam: '', chalk: '', felt: '' },
});

describe('heapScale', () => {
	it('makes the child, the hand and the heap fit, whatever the count', () => {
		for (const beside of ['child', 'hand'] as const)
			for (const count of [0, 1, 50, 4000, 1_000_000]) {
				const one = picture(count, beside);
				const pxPerMm = heapScale(one);
				const tall_mm = beside === 'child' ? 1200 : 180;
				const wide_mm = beside === 'child' ? 400 : 100;
				expect(pxPerMm * Math.max(tall_mm, one.heap.height_cm * 10)).toBeLessThanOrEqual(600);
				expect(pxPerMm * (wide_mm + one.heap.width_cm * 10)).toBeLessThanOrEqual(900);
			}
	});

	it('shows a hand larger than a child', () => {
		expect(heapScale(picture(500, 'hand'))).toBeGreaterThan(2 * heapScale(picture(500, 'child')));
	});
});
