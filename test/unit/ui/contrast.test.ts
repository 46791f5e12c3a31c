import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast } from '../../../src/lib/ui/contrast';

describe('contrast', () => {
	// worked values of the WCAG 2.2 formula; 4.5 and 3 are the limits of 1.4.3 and 1.4.11
	it.each([
		['#000000', '#ffffff', 21.0],
		['#767676', '#ffffff', 4.54],
		['#777777', '#ffffff', 4.48],
		['#949494', '#ffffff', 3.03],
		['#ff0000', '#ffffff', 4.0],
		['#0000ff', '#ffffff', 8.59],
		['#ffff00', '#000000', 19.56],
	])('%s on %s is %d', (a, b, ratio) => {
		expect(contrast(a, b)).toBeCloseTo(ratio, 2);
		expect(contrast(b, a)).toBe(contrast(a, b));
	});

	it('refuses other notations', () => {
		expect(() => contrast('red', '#ffffff')).toThrow(/#rrggbb/);
	});
});

describe('colours of the design', () => {
	const css = readFileSync(path.resolve(__dirname, '../../../src/app.css'), 'utf8');
	const colour = (name: string) => {
		const found = new RegExp(`--${name}:\\s*(#[0-9a-f]{6})`).exec(css);
		if (!found) throw new Error(`no colour --${name} in app.css`);
		return found[1];
	};
	const grounds = ['felt', 'felt-raised', 'felt-high'];
	const pairs = [
		...['bone', 'chalk', 'amber', 'rust'].flatMap((ink) =>
			grounds.map((ground) => [ink, ground, 4.5] as const),
		),
		['on-amber', 'amber', 4.5] as const,
		...grounds.map((ground) => ['amber-dim', ground, 3] as const),
	];
	it.each(pairs)('%s on %s reaches %d', (ink, ground, least) => {
		expect(contrast(colour(ink), colour(ground))).toBeGreaterThanOrEqual(least);
	});
	describe('in high contrast', () => {
		const start = css.indexOf(":root[data-contrast='high'] {");
		const own = css.slice(start, css.indexOf('}', start));
		const strong = (name: string) => {
			const found = new RegExp(`--${name}:\\s*(#[0-9a-f]{6})`).exec(own);
			if (!found) throw new Error(`no colour --${name} of its own in high contrast`);
			return found[1];
		};
		const all = [...grounds, 'felt-deep'];
		// WCAG 2.2: 1.4.6 asks 7:1 for text, 1.4.11 asks 3:1 for outlines of controls
		it.each(['bone', 'chalk', 'amber', 'rust'].flatMap((ink) => all.map((ground) => [ink, ground])))(
			'%s on %s reaches 7',
			(ink, ground) => {
				expect(contrast(strong(ink), strong(ground))).toBeGreaterThanOrEqual(7);
			},
		);
		it('what stands on amber reaches 7', () => {
			expect(contrast(strong('on-amber'), strong('amber'))).toBeGreaterThanOrEqual(7);
		});
		it.each(['seam', 'amber-dim'].flatMap((line) => all.map((ground) => [line, ground])))(
			'outlines of %s on %s reach 3',
			(line, ground) => {
				expect(contrast(strong(line), strong(ground))).toBeGreaterThanOrEqual(3);
			},
		);
	});

	// the lamplight behind the start screen is the lightest ground that text stands on
	it.each(['bone', 'chalk', 'amber'])('%s on the lightest part of the background reaches 4.5', (ink) => {
		expect(css).toContain('#3a2a1a 0%');
		expect(contrast(colour(ink), '#3a2a1a')).toBeGreaterThanOrEqual(4.5);
	});
});
