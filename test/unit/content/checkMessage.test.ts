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
		['{count', 'a closing } is missing'],
		['{}', 'there is nothing between { and }'],
		['{two words}', 'the name between { and } is one word of letters, digits and _'],
		['{n, many}', 'only number, plural or select may follow the comma'],
		['{n, plural, one {a}}', 'the choice other {…} is missing'],
		['<b>{n}</b>', 'a < with a letter behind it is not possible here'],
		['a <b', 'a < with a letter behind it is not possible here'],
		['{n, plural, other {<i>a</i>}}', 'a < with a letter behind it is not possible here'],
		['{n, plural}', 'choices are written {count, plural, one {# tooth} other {# teeth}}'],
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
