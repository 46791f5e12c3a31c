import { readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { CERTAINTIES, PARTS, PRESERVATIONS } from '../../../src/lib/content/exhibit';
import { STATEMENTS } from '../../../src/lib/content/licence';
import { HEALTH_FILTERS, HEALTH_SORTS } from '../../../src/lib/ui/desk/healthList';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../..');
const LANGUAGES = ['en', 'fr', 'es'];
const words = Object.fromEntries(
	LANGUAGES.map((code) => [
		code,
		parse(readFileSync(path.join(root, `content/ui/${code}.yaml`), 'utf8')) as Record<string, string>,
	]),
);

function filesBelow(folder: string): string[] {
	return readdirSync(folder).flatMap((name) => {
		const at = path.join(folder, name);
		return statSync(at).isDirectory() ? filesBelow(at) : /\.(svelte|ts)$/.test(name) ? [at] : [];
	});
}

/** Keys that the desk's pages say as they stand, and the beginnings of those that they put together. */
function said(): { whole: Set<string>; beginnings: Set<string> } {
	const whole = new Set<string>();
	const beginnings = new Set<string>();
	for (const file of ['src/routes/desk', 'src/lib/ui/desk'].flatMap((one) =>
		filesBelow(path.join(root, one)),
	)) {
		const text = readFileSync(file, 'utf8');
		for (const [, key] of text.matchAll(/'(desk_[\w-]+)'/g)) whole.add(key);
		for (const [, key] of text.matchAll(/`(desk_[\w-]*)\$\{/g)) beginnings.add(key);
	}
	return { whole, beginnings };
}

describe('words of the desk', () => {
	const { whole, beginnings } = said();

	it.each(LANGUAGES)('are all there in %s', (code) => {
		expect([...whole].filter((key) => words[code][key] === undefined)).toEqual([]);
		const keys = Object.keys(words[code]);
		expect([...beginnings].filter((start) => !keys.some((key) => key.startsWith(start)))).toEqual([]);
	});

	it.each(LANGUAGES)('name every choice in %s', (code) => {
		const wanted = [
			...PARTS.map((one) => `desk_part_${one}`),
			...PRESERVATIONS.map((one) => `desk_preservation_${one}`),
			...CERTAINTIES.map((one) => `desk_certainty_${one}`),
			...STATEMENTS.map((one) => `desk_rights_${one}`),
			...HEALTH_FILTERS.map((one) => `desk_filter_${one}`),
			...HEALTH_SORTS.map((one) => `desk_sort_${one}`),
			...['shown', 'until', 'older', 'draft', 'later', 'over', 'broken'].map((one) => `desk_state_${one}`),
			...['whole', 'partly', 'missing', 'broken'].map((one) => `desk_words_${one}`),
			...['model', 'scan', 'marked', 'unmarked', 'none'].map((one) => `desk_shape_${one}`),
			...['signed-out', 'no-answer', 'refused'].map((one) => `desk_save_${one}`),
			...['desk', 'spreadsheet', 'marking', 'outside'].map((one) => `desk_by_${one}`),
		];
		expect(wanted.filter((key) => words[code][key] === undefined)).toEqual([]);
	});

	it('are the same keys in every language', () => {
		const ofDesk = (code: string) =>
			Object.keys(words[code])
				.filter((key) => key.startsWith('desk_'))
				.sort();
		expect(ofDesk('fr')).toEqual(ofDesk('en'));
		expect(ofDesk('es')).toEqual(ofDesk('en'));
	});
});
