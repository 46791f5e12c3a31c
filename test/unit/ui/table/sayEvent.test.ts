import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { TableEvent } from '../../../../src/lib/kiosk/comparison.svelte';
import { formatIcu } from '../../../../src/lib/kiosk/formatIcu';
import { ScreenText } from '../../../../src/lib/kiosk/text.svelte';
import { sayEvent } from '../../../../src/lib/ui/table/sayEvent';

const textIn = (lang: string) => {
	const file = path.resolve(__dirname, `../../../../content/ui/${lang}.yaml`);
	const ui = parse(readFileSync(file, 'utf8')) as Record<string, string>;
	const text = new ScreenText(
		() => lang,
		() => ui,
	);
	text.useFormatter(formatIcu);
	return text;
};
const TITLES: Record<string, string> = { a: 'A hook', b: 'A saw' };
const say = (lang: string, event: TableEvent) => sayEvent(event, (id) => TITLES[id] ?? '', textIn(lang));

describe('sayEvent', () => {
	it('says what was laid, what had to go, and what was taken away', () => {
		expect(say('en', { kind: 'laid', place: 1, id: 'a', went: null })).toBe('A hook lies in place 2.');
		expect(say('en', { kind: 'laid', place: 0, id: 'a', went: 'b' })).toBe(
			'A hook lies in place 1. A saw went back to the drawer.',
		);
		expect(say('en', { kind: 'taken', place: 0, id: 'b' })).toBe('A saw went back to the drawer.');
		expect(say('en', { kind: 'opened', place: 2 })).toBe('Place 3 is open.');
		expect(say('en', { kind: 'moved', place: 3, id: 'b' })).toBe('A saw lies in place 4.');
	});

	it('speaks every language of the exhibit', () => {
		const event: TableEvent = { kind: 'laid', place: 0, id: 'a', went: 'b' };
		expect(say('fr', event)).toBe('A hook est à la place 1. A saw est de retour dans le tiroir.');
		expect(say('es', event)).toBe('A hook está en el lugar 1. A saw ha vuelto al cajón.');
	});
});

describe('ScreenText.list', () => {
	it('joins with the word of the language', () => {
		const three = ['1', '2', '3'];
		expect(textIn('en').list(three)).toBe('1, 2, and 3');
		expect(textIn('fr').list(three)).toBe('1, 2 et 3');
		expect(textIn('es').list(three)).toBe('1, 2 y 3');
		expect(textIn('en').list(['1'])).toBe('1');
	});
});
