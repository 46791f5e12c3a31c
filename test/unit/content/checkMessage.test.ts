import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, it } from 'vitest';
import { checkMessage, literalMessage } from '../../../src/lib/content/checkMessage';

describe('checkMessage', () => {
	it('names the fillers, also those inside choices', () => {
		expect(checkMessage('No filler, 5 < 6')).toEqual({ ok: true, names: [] });
		const text = '{b} {a, plural, one {# {c}} other {{a} {d, select, x {{e}} other {}}}} {f, number}';
		expect(checkMessage(text)).toEqual({ ok: true, names: ['a', 'b', 'c', 'd', 'e', 'f'] });
	});

	it.each([
		['{count', 'brace-open'],
		['{}', 'brace-empty'],
		['{two words}', 'bad-filler'],
		['{n, many}', 'bad-type'],
		['{n, plural, one {a}}', 'no-other'],
		['<b>{n}</b>', 'tag'],
		['a <b', 'tag'],
		['{n, plural, other {<i>a</i>}}', 'tag'],
		['{n, plural}', 'bad-choices'],
	])('says what is wrong with %s', (text, why) => {
		expect(checkMessage(text)).toEqual({ ok: false, why });
	});

	it.each([
		'{count, plural, one {# tooth}}',
		"it's {broken",
		'a } b {',
		"don't",
		"'{' {",
		'<b>{n}</b>',
		'a <b {n',
	])('%s can be shown as it was typed', (text) => {
		expect(new IntlMessageFormat(literalMessage(text), 'en').format()).toBe(text);
	});
});
