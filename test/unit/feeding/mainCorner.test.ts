import { expect, it } from 'vitest';
import { mainCorner, MAIN_SHARE } from '../../../src/lib/domain/feeding/mainCorner';
import { CORNERS, MIDDLE } from '../../../src/lib/domain/feeding/position';

it('names each corner in its own corner, and none in the middle', () => {
	for (const corner of CORNERS)
		expect(mainCorner({ pierce: 0.1, cut: 0.1, crush: 0.1, [corner]: 0.8 })).toBe(corner);
	expect(mainCorner(MIDDLE)).toBeNull();
	expect(mainCorner({ pierce: 0.42, cut: 0.42, crush: 0.16 })).toBeNull();
});

it('begins where it says', () => {
	expect(mainCorner({ pierce: MAIN_SHARE, cut: 0.4, crush: 0.15 })).toBe('pierce');
	expect(mainCorner({ pierce: MAIN_SHARE - 0.01, cut: 0.41, crush: 0.15 })).toBeNull();
});
