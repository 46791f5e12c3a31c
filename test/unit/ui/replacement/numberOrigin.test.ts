import { describe, expect, it } from 'vitest';
import type { NumberView } from '../../../../src/lib/content/replacement/view';
import { originOf } from '../../../../src/lib/ui/replacement/numberOrigin';

const number = (mark: NumberView['mark'], citation: string): NumberView => ({
	from: 1,
	to: 2,
	mark,
	source: { citation, tag: 'seen' },
});

describe('originOf', () => {
	it('lists each work once and leaves out numbers that are not there', () => {
		const origin = originOf('so', number(null, 'A'), undefined, number(null, 'A'), number(null, 'B'));
		expect(origin.sources.map(({ citation }) => citation)).toEqual(['A', 'B']);
		expect('tag' in origin).toBe(false);
	});

	it('is as sure as its least sure number', () => {
		expect(originOf('so', number('ours', 'A'), number('second-hand', 'B')).tag).toBe('second-hand');
		expect(originOf('so', number('second-hand', 'A'), number('memory', 'B')).tag).toBe('memory');
		expect(originOf('so', number(null, 'A'), number('ours', 'B')).tag).toBe('ours');
	});
});
