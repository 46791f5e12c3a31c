import { describe, expect, it } from 'vitest';
import { formatIcu } from '../../../src/lib/kiosk/formatIcu';
import { ScreenText } from '../../../src/lib/kiosk/text.svelte';

const words = { plain: 'Start', teeth: '{count, plural, one {# tooth} other {# teeth}}' };
const make = (lang: string) =>
	new ScreenText(
		() => lang,
		() => words,
	);

describe('ScreenText', () => {
	it('gives plain words without a formatter, and a missing key as itself', () => {
		const text = make('en');
		expect(text.say('plain')).toBe('Start');
		expect(text.say('no_such_key')).toBe('no_such_key');
		expect(text.has('no_such_key')).toBe(false);
	});

	it('fills values by ICU rules once a formatter is given', () => {
		const text = make('en');
		expect(() => text.say('teeth', { count: 1 })).toThrow(/no formatter/);
		text.useFormatter(formatIcu);
		expect(text.say('teeth', { count: 1 })).toBe('1 tooth');
		expect(text.say('teeth', { count: 2 })).toBe('2 teeth');
	});

	it('writes numbers as the language does', () => {
		expect(make('en').number(38.14, 1)).toBe('38.1');
		expect(make('fr').number(38.14, 1)).toBe('38,1');
		expect(make('es').number(1.5, 2)).toBe('1,50');
	});

	it('keeps the language in addresses', () => {
		expect(make('fr').href('/compare')).toBe('/compare?lang=fr');
		expect(make('fr').href('/compare?teeth=a')).toBe('/compare?teeth=a&lang=fr');
	});
});
