import { describe, expect, it } from 'vitest';
import { heightIn, likelyUnit, meantUnit } from '../../../src/lib/content/likelyUnit';
import type { ScanLook } from '../../../src/lib/content/scanUpload';

const look = (longest: number, height: number | null, format: ScanLook['format'] = 'stl') => ({
	format,
	bytes: 1,
	triangles: 1,
	box: [longest, longest / 2, longest / 3] as [number, number, number],
	crown: height === null ? null : { height, baseLength: height / 2, baseWidth: height / 3 },
});

describe('likelyUnit', () => {
	it('goes by the size of teeth, and by the standard of the file', () => {
		expect(likelyUnit(look(60, 38), null)).toBe('mm');
		expect(likelyUnit(look(0.06, 0.038), null)).toBe('m');
		expect(likelyUnit(look(0.06, 0.038, 'glb'), null)).toBe('m');
		// a GLB of 60 m is no tooth: its maker did not keep to the standard
		expect(likelyUnit(look(60, 38, 'glb'), null)).toBe('mm');
		expect(likelyUnit(look(1e9, null), null)).toBeNull();
	});

	it('goes by the card before all else', () => {
		expect(likelyUnit(look(2.36, 1.5), 38.1)).toBe('in');
		expect(likelyUnit(look(6, 3.81), 38.1)).toBe('cm');
		expect(likelyUnit(look(60, 38.1), 38.1)).toBe('mm');
		expect(likelyUnit(look(60, 20), 38.1)).toBeNull();
	});
});

describe('meantUnit', () => {
	it('names the unit that a card speaks for, and is silent where they agree', () => {
		expect(meantUnit('mm', look(2.36, 1.5), 38.1)).toBe('in');
		expect(meantUnit('cm', look(60, 38), 38.1)).toBe('mm');
		expect(meantUnit('m', look(60, 38), 38.1)).toBe('mm');
		expect(meantUnit('mm', look(60, 38), 38.1)).toBeNull();
		expect(meantUnit('mm', look(60, 20), 38.1)).toBeNull();
		expect(meantUnit('m', look(60, null), 38.1)).toBeNull();
	});

	it('takes the inch for 25.4 mm', () => expect(heightIn('in', look(2, 1))).toBe(25.4));
});
