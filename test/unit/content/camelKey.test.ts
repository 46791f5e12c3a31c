import { describe, expect, it } from 'vitest';
import { camelKey, camelKeys, snakeKey } from '../../../src/lib/content/camelKey';

describe('camelKey', () => {
	it.each([
		['taper', 'taper'],
		['crown_height_mm', 'crownHeight_mm'],
		['tip_worn_to_mm', 'tipWornTo_mm'],
		['serrations_per_5mm', 'serrationsPer5mm'],
		['serration_depth_mm', 'serrationDepth_mm'],
		['width_factor', 'widthFactor'],
		['distal_deg', 'distal_deg'],
		['oldest_ma', 'oldest_Ma'],
		['reset_after_warning_s', 'resetAfterWarning_s'],
		['diagonal_in', 'diagonal_in'],
		['width_px', 'width_px'],
		['based_on', 'basedOn'],
		['last_period_d', 'lastPeriod_d'],
		['line_um', 'line_um'],
		['tooth_mm3', 'tooth_mm3'],
	])('%s is %s in code, and back', (inFile, inCode) => {
		expect(camelKey(inFile)).toBe(inCode);
		expect(snakeKey(inCode)).toBe(inFile);
	});

	it('tidies what people type', () => {
		expect(['rights-holder', 'Rights Holder', 'rightsHolder', 'RIGHTS_HOLDER'].map(snakeKey)).toEqual(
			Array(4).fill('rights_holder'),
		);
	});

	it('renames one level and keeps the values', () => {
		expect(camelKeys({ tip_radius_mm: 1, sections: [{ at_x: 1 }] })).toEqual({
			tipRadius_mm: 1,
			sections: [{ at_x: 1 }],
		});
	});
});
