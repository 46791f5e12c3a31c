import { describe, expect, it } from 'vitest';
import { formatIcu } from '../../../src/lib/kiosk/formatIcu';
import { ScreenText } from '../../../src/lib/kiosk/text.svelte';

const say = (lang: string, message: string, count: number) => formatIcu(lang, message, { count });

describe('formatIcu', () => {
	// which number takes which form: Unicode CLDR, Language Plural Rules (cardinals)
	it('has the six forms of Arabic', () => {
		const message = '{count, plural, zero {Z} one {O} two {T} few {F} many {M} other {X}}';
		const forms = (numbers: number[]) => numbers.map((count) => say('ar', message, count)).join('');
		expect(forms([0, 1, 2])).toBe('ZOT');
		expect(forms([3, 6, 10, 103, 110])).toBe('FFFFF');
		expect(forms([11, 26, 99, 111, 199])).toBe('MMMMM');
		expect(forms([100, 101, 102, 200, 1000])).toBe('XXXXX');
	});

	it('has few and many of Polish', () => {
		const message = '{count, plural, one {# ząb} few {# zęby} many {# zębów} other {# zęba}}';
		const said = (count: number) => say('pl', message, count);
		expect([1, 2, 4, 5, 12, 22, 25, 112].map(said)).toEqual([
			'1 ząb',
			'2 zęby',
			'4 zęby',
			'5 zębów',
			'12 zębów',
			'22 zęby',
			'25 zębów',
			'112 zębów',
		]);
		expect(said(1.5)).toBe('1,5 zęba');
	});

	it('has one, few and many of Russian, where 21 takes one', () => {
		const message = '{count, plural, one {# зуб} few {# зуба} many {# зубов} other {# зуба}}';
		expect([1, 3, 5, 11, 21, 104].map((count) => say('ru', message, count))).toEqual([
			'1 зуб',
			'3 зуба',
			'5 зубов',
			'11 зубов',
			'21 зуб',
			'104 зуба',
		]);
	});

	it('has the one form of Japanese', () => {
		expect([0, 1, 2].map((count) => say('ja', '{count, plural, other {歯#本}}', count))).toEqual([
			'歯0本',
			'歯1本',
			'歯2本',
		]);
	});

	it('lets the language choose its figures', () => {
		for (const lang of ['ar', 'ar-EG', 'fa', 'hi', 'de'])
			expect(formatIcu(lang, '{n, number}', { n: 1234.5 })).toBe(new Intl.NumberFormat(lang).format(1234.5));
		// of which Egypt and Iran have their own (CLDR: arab, arabext)
		expect(formatIcu('ar-EG', '{n, number}', { n: 123 })).toBe('١٢٣');
		expect(formatIcu('fa', '{n, number}', { n: 123 })).toBe('۱۲۳');
	});

	it('keeps texts that are filled in together, but not what only chooses', () => {
		const message = '{kind, select, full {كامل} other {؟}} {name}';
		expect(formatIcu('ar', message, { kind: 'full', name: 'Mosasaurus' }, true)).toBe(
			'كامل \u2068Mosasaurus\u2069',
		);
		expect(formatIcu('ar', message, { kind: 'full', name: 'Mosasaurus' })).toBe('كامل Mosasaurus');
	});
});

describe('ScreenText in a language from the right', () => {
	const make = (dir: 'ltr' | 'rtl') =>
		new ScreenText(
			() => 'he',
			() => ({ named: '{name}' }),
			() => dir,
		);
	it('keeps a number and its unit in order', () => {
		expect(make('rtl').amount(38.1, 1, 'mm')).toBe('\u206638.1 mm\u2069');
		expect(make('ltr').amount(38.1, 1, 'mm')).toBe('38.1 mm');
	});
	it('keeps Latin names together', () => {
		const text = make('rtl');
		text.useFormatter(formatIcu);
		expect(text.say('named', { name: 'T. rex' })).toBe('\u2068T. rex\u2069');
	});
	it('fills borrowed lines by the rules of their own language, and tells what was said', () => {
		const told: string[] = [];
		const text = new ScreenText(
			() => 'pl',
			() => ({ teeth: '{count, plural, one {# tooth} other {# teeth}}' }),
			() => 'ltr',
			() => ({ lang: 'en', has: (key) => key === 'teeth', said: (words) => void told.push(words) }),
			() => '&marks=missing',
		);
		text.useFormatter(formatIcu);
		expect(text.say('teeth', { count: 2 })).toBe('2 teeth');
		expect(told).toEqual(['2 teeth']);
		expect(text.href('/quiz')).toBe('/quiz?lang=pl&marks=missing');
	});
});
