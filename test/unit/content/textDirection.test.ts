import { afterEach, describe, expect, it, vi } from 'vitest';
import { scriptDirection, textDirection } from '../../../src/lib/content/textDirection';

describe('textDirection', () => {
	afterEach(() => vi.unstubAllGlobals());

	// characterOrder of each language in Unicode CLDR, from memory
	const RTL = ['ar', 'fa', 'he', 'ur', 'ps', 'sd', 'ug', 'yi', 'dv', 'ckb'];
	const LTR = ['en', 'fr', 'es', 'de', 'pl', 'ru', 'el', 'ja', 'zh', 'hi', 'th', 'tr', 'am'];

	it.each(RTL)('%s runs from right to left', (code) => expect(textDirection(code)).toBe('rtl'));
	it.each(LTR)('%s runs from left to right', (code) => expect(textDirection(code)).toBe('ltr'));

	it('works it out from the script where the browser does not tell', () => {
		class Silent {
			constructor(readonly code: string) {}
			maximize() {
				return { script: { ar: 'Arab', he: 'Hebr', dv: 'Thaa' }[this.code] ?? 'Latn' };
			}
		}
		vi.stubGlobal('Intl', { Locale: Silent });
		expect(['ar', 'he', 'dv', 'de'].map((code) => textDirection(code))).toEqual(['rtl', 'rtl', 'rtl', 'ltr']);
	});

	it('takes a language of nobody for one from the left, and never throws', () => {
		expect(textDirection('qaa')).toBe('ltr');
		expect(textDirection('')).toBe('ltr');
		expect(textDirection('not a code')).toBe('ltr');
		expect(scriptDirection(undefined)).toBe('ltr');
	});

	it('lets the curator say otherwise', () => {
		expect(textDirection('ks', 'ltr')).toBe('ltr');
		expect(textDirection('qaa', 'rtl')).toBe('rtl');
	});
});
