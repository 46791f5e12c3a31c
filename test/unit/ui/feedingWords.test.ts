import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { RIDGE_VERDICTS } from '../../../src/lib/content/feedingContent';
import { CORNERS } from '../../../src/lib/domain/feeding/position';
import { PULLING_TRAITS } from '../../../src/lib/domain/feeding/place';
import { STEPS } from '../../../src/lib/kiosk/feeding/feedingTable.svelte';
import { formatIcu } from '../../../src/lib/kiosk/formatIcu';

const ROOT = path.resolve(__dirname, '../../..');
const LANGUAGES = ['en', 'fr', 'es'];
const words = Object.fromEntries(
	LANGUAGES.map((lang) => [
		lang,
		parse(readFileSync(path.join(ROOT, `content/ui/${lang}.yaml`), 'utf8')) as Record<string, string>,
	]),
);
const code = ['src/lib/ui/feeding', 'src/routes/feeding'].flatMap((folder) =>
	readdirSync(path.join(ROOT, folder))
		.filter((name) => /\.(svelte|ts)$/.test(name))
		.map((name) => readFileSync(path.join(ROOT, folder, name), 'utf8')),
);

/** Codes of notes, read from the type that lists them: a new one must be given words. */
const NOTES = [
	...readFileSync(path.join(ROOT, 'src/lib/domain/feeding/note.ts'), 'utf8').matchAll(/\| '([a-z-]+)'/g),
].map((match) => match[1]);

/** Keys put together from parts. */
const FAMILIES: Record<string, readonly string[]> = {
	feed_step_: STEPS,
	feed_corner_: CORNERS,
	feed_zone_: ['pierce-cut', 'cut-crush', 'pierce-crush', 'middle'],
	feed_good_: ['pierce-cut', 'cut-crush', 'pierce-crush', 'middle'],
	feed_number_: ['force', 'stress', 'breaks', 'safety'],
	feed_how_: ['force', 'stress', 'breaks', 'safety'],
	feed_result_: ['snaps', 'risky', 'holds', 'easily'],
	feed_safety_: ['snaps', 'risky', 'holds', 'easily'],
	feed_way_: ['seize', 'shake', 'tear', 'swallow'].flatMap((way) => [way, `${way}_how`]),
	feed_trait_: PULLING_TRAITS,
	feed_reading_: ['tip-worn', 'not-measurable', 'not-recorded', 'germ'],
	feed_verdict_: RIDGE_VERDICTS,
	feed_note_: NOTES,
};
const used = new Set([
	...code.flatMap((text) => [...text.matchAll(/say\(\s*'([a-z_-]+)'/g)].map((match) => match[1])),
	...Object.entries(FAMILIES).flatMap(([prefix, ends]) => ends.map((end) => prefix + end)),
]);

describe('words of the feeding guide', () => {
	it('are all there in three languages', () => {
		expect(NOTES.length).toBeGreaterThan(9);
		expect(used.size).toBeGreaterThan(100);
		for (const lang of LANGUAGES)
			expect(
				[...used].filter((key) => !words[lang][key]),
				lang,
			).toEqual([]);
	});

	it('are all used', () => {
		const spare = Object.keys(words.en).filter((key) => key.startsWith('feed_') && !used.has(key));
		// keys chosen by a condition inside say(...), and the link on the compare room's card
		const chosen = code.join('\n') + "'feed_take'";
		expect(spare.filter((key) => !chosen.includes(`'${key}'`))).toEqual([]);
	});

	it('ask for the same values in every language, and take them', () => {
		const values = { count: 3, height: 8, low: 5, high: 40, pierce: 10, cut: 20, crush: 70 };
		const named = { to: 'a', name: 'b', value: 'c', prey: 'd', tooth: 'e', corner: 'f' };
		const holes = (message: string) =>
			[...message.matchAll(/\{(\w+)/g)]
				.map((match) => match[1])
				.filter((name) => name in values || name in named);
		for (const key of used)
			for (const lang of LANGUAGES) {
				expect([...new Set(holes(words[lang][key]))].sort(), `${lang} ${key}`).toEqual(
					[...new Set(holes(words.en[key]))].sort(),
				);
				expect(formatIcu(lang, words[lang][key], { ...values, ...named })).not.toMatch(/[{}]/);
			}
	});
});
