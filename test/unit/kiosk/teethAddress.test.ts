import { expect, it } from 'vitest';
import { teethAddress } from '../../../src/lib/kiosk/teethAddress';

it('reads two, three and four teeth, one alone, an open place, and nothing', () => {
	expect(teethAddress.read('a,b')).toEqual(['a', 'b']);
	expect(teethAddress.read('a,b,c,d')).toEqual(['a', 'b', 'c', 'd']);
	expect(teethAddress.read('a')).toEqual(['a']);
	expect(teethAddress.read('a,')).toEqual(['a', null]);
	expect(teethAddress.read(' a , b ')).toEqual(['a', 'b']);
	expect(teethAddress.read('')).toEqual([]);
	expect(teethAddress.read(null)).toEqual([]);
});

it('writes what it reads back', () => {
	for (const ids of [
		['a', 'b'],
		['a', null],
		[null, 'b'],
		['a', 'b', 'c'],
		['a', 'b', 'c', 'd'],
	])
		expect(teethAddress.read(teethAddress.write(ids))).toEqual(ids);
});
