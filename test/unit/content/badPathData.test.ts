import { describe, expect, it } from 'vitest';
import { badPathData } from '../../../src/lib/content/pathData';

describe('badPathData', () => {
	// numbers that each command takes: SVG 2, 9.3.2 to 9.3.8 (path data)
	it.each([
		'M0 0L10 5Z',
		'M10-5l.5.5z',
		'm1,2 3,4 5,6z',
		'M0 0h10v-5H0V0',
		'M0 0c1 2 3 4 5 6s1 2 3 4',
		'M0 0q1 2 3 4t5 6',
		'M0 0a5 5 0 0110 10z', // flags may stand without spaces: 0 1 10 10
		'M0 0a5 5 0 01.5-.5',
		'M1e2-3E-1L0 0',
		'M0 0zM5 5z',
	])('takes %s', (d) => {
		expect(badPathData(d)).toBeNull();
	});

	it.each([
		['', 'nothing more'],
		['L10 5', 'L10 5'], // begins without M
		['M0', 'nothing more'], // one number short
		['M0 0 L10', 'nothing more'],
		['M0 0 L1 2 3 Z', 'Z'],
		['M0 0 Z 5', '5'],
		['M0 0 C1 2 3 4 5', 'nothing more'],
		['M0 0 a5 5 0 2 0 10 10', '2 0 10 10'], // a flag is 0 or 1
		['M0 0 B1 2', 'B1 2'],
		['M0 0 L1 2"/><script>', '"/><script>'],
		['M0 0 L1 NaN', 'NaN'],
		['M0 0 L1 2;', ';'],
	])('refuses "%s" at "%s"', (d, found) => {
		expect(badPathData(d)?.found).toBe(found);
	});
});
