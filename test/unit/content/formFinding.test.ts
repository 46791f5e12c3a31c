import { describe, expect, it } from 'vitest';
import { formFinding } from '../../../src/lib/content/formFinding';

describe('formFinding', () => {
	it('points at the field as the file writes it', () => {
		const asked: unknown[] = [];
		const found = formFinding(
			{ code: 'out-of-range', path: 'wear.facets[1].angle_deg', found: 90.12345, min: 5, max: 85 },
			(path) => {
				asked.push(path);
				return { line: 7, column: 3 };
			},
		);
		expect(asked).toEqual([['shape', 'model', 'wear', 'facets', 1, 'angle_deg']]);
		expect(found).toEqual({
			id: 'out-of-range',
			severity: 'error',
			line: 7,
			column: 3,
			path: 'shape.model.wear.facets[1].angle_deg',
			data: { path: 'shape.model.wear.facets[1].angle_deg', found: '90.12345', min: 5, max: 85 },
			message: 'angle_deg is 90.12; it can be from 5 to 85.',
			remedy: 'Check the number and its unit; the nearest possible is angle_deg: 85',
		});
	});

	it('rounds a limit to its safe side', () => {
		const place = () => ({ line: 1, column: 1 });
		const wide = { code: 'out-of-range', path: 'baseWidth_mm', found: 1, min: 4.23333, max: 152.4 } as const;
		expect(formFinding(wide, place).message).toBe('base_width_mm is 1; it can be from 4.24 to 152.');
		const blunt = { code: 'tip-too-blunt', path: 'tipRadius_mm', found: 3, max: 2.999 } as const;
		expect(formFinding(blunt, place).remedy).toBe('Make it smaller, for example tip_radius_mm: 2.99');
	});

	it('has words for a surface that does not close', () => {
		const found = formFinding({ code: 'not-closed', path: '' }, () => ({ line: 8, column: 3 }));
		expect(found).toMatchObject({ id: 'shape-not-closed', path: 'shape.model', line: 8, column: 3 });
		expect(found.message).toBe('The numbers of the model do not give a closed tooth.');
	});
});
