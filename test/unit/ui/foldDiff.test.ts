import { describe, expect, it } from 'vitest';
import { foldDiff } from '../../../src/lib/ui/desk/foldDiff';
import { wordDiff } from '../../../src/lib/ui/desk/wordDiff';

const lines = (from: number, to: number) =>
	Array.from({ length: to - from + 1 }, (_, i) => `line ${from + i}\n`).join('');

describe('foldDiff', () => {
	it('loses nothing of what changed, and leaves out what is far from it', () => {
		const before = lines(1, 40);
		const after = before.replace('line 20\n', 'another 20\n');
		const folded = foldDiff(wordDiff(before, after));
		const text = (kind: string) => folded.flatMap((part) => (part.is === kind ? [part.text] : [])).join('');
		expect(text('out')).toBe('line');
		expect(text('in')).toBe('another');
		expect(text('same')).toContain('line 19\n');
		expect(text('same')).toContain('line 21\n');
		expect(text('same')).not.toContain('line 5\n');
		expect(folded.filter(({ is }) => is === 'folded')).toHaveLength(2);
	});

	it('keeps a short text whole', () => {
		const folded = foldDiff(wordDiff('One two three.', 'One three.'));
		expect(folded.some(({ is }) => is === 'folded')).toBe(false);
		const after = folded.map((part) => (part.is === 'out' ? '' : part.text)).join('');
		expect(after).toBe('One three.');
	});
});
