import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import type { PreparingState } from '../../../src/lib/server/preparingState';
import Preparing from '../../../src/lib/ui/Preparing.svelte';

type Props = { done: number; total: number } & Partial<PreparingState>;

/** The page without tags, one space between words. */
function words(props: Props): string {
	return render(Preparing, { props })
		.body.replace(/<!--[^]*?-->/g, '')
		.replace(/<[^>]+>/g, ' ')
		.replace(/\s+/g, ' ');
}

describe('Preparing', () => {
	it('tells stage, count and time left in three languages', () => {
		const current = [{ specimen: 'skm-0181', stage: 'measuring' as const, fraction: 0.2 }];
		const text = words({ done: 3, total: 16, current, remaining_s: 42 });
		expect(text).toContain('Measuring · 3 / 16 · ≈ 45 sec');
		expect(text).toContain('Mesure · 3 / 16 · ≈ 45 s');
		expect(text).toContain('Medición · 3 / 16 · ≈ 45 s');
		expect(words({ done: 3, total: 16, current, remaining_s: 130 })).toContain('≈ 2 min');
		const { body } = render(Preparing, { props: { done: 3, total: 16, current } });
		expect(body).toMatch(/<progress[^>]*value="3\.2"[^>]*max="16"|<progress[^>]*max="16"[^>]*value="3\.2"/);
	});

	it('says nothing of time or stage while nobody can tell, and shows no bar without work', () => {
		const text = words({ done: 0, total: 16, remaining_s: null });
		expect(text).toContain(' 0 / 16 ');
		expect(text).not.toContain('≈');
		expect(render(Preparing, { props: { done: 0, total: 0 } }).body).not.toContain('<progress');
	});
});
