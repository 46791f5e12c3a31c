import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderMarkdown } from '../../../src/lib/content/renderMarkdown';

/** Anything but text, the allowed tags and the four escapes means that something got through. */
const HARMLESS =
	/^(?:[^<>&]|&(?:lt|gt|amp|quot|#39);|<\/?(?:p|em|strong|ul|ol|li|h3|h4|blockquote)>|<br \/>)*$/;

const ATTACKS = [
	'<script>alert(1)</script>',
	'<img src=x onerror=alert(1)>',
	'<svg/onload=alert(1)>',
	'<a href="https://example.org" onclick="alert(1)">go</a>',
	'<iframe src="https://example.org"></iframe>',
	'<style>@import url(https://example.org)</style>',
	'</p></div><form action="https://example.org"><input name="n"></form>',
	'[tap](javascript:alert(1))',
	'[tap](JaVaScRiPt:alert(1))',
	'[tap](&#106;avascript:alert(1))',
	'[tap](data:text/html;base64,PHNjcmlwdD4=)',
	'[tap](vbscript:msgbox)',
	'[tap][1]\n\n[1]: javascript:alert(1)',
	'[tap](https://example.org "onmouseover=alert(1)")',
	'[tap](https://example.org/?q="><script>alert(1)</script>)',
	'![x](javascript:alert(1))',
	'![x" onerror="alert(1)](y.png)',
	'<javascript:alert(1)>',
	'`<script>alert(1)</script>`',
	'```html\n<script>alert(1)</script>\n```',
	'&lt;script&gt;alert(1)&lt;/script&gt;',
	'<!-- --!><script>alert(1)</script> -->',
	'<![CDATA[<script>alert(1)</script>]]>',
	'**<scr**ipt>alert(1)</script>',
	'![x](https://example.org/pixel.png)',
	'![x](//example.org/pixel.png "title")',
	'![x][p]\n\n[p]: https://example.org/pixel.png',
	'<picture><source srcset="https://example.org/a.png"><img src="b.png"></picture>',
	'<video poster="https://example.org/a.png" autoplay></video>',
	'<link rel="stylesheet" href="https://example.org/a.css">',
	'<meta http-equiv="refresh" content="0;url=https://example.org">',
	'<base href="https://example.org/">',
	'<math><mtext><a xlink:href="javascript:alert(1)">x</a></mtext></math>',
	'[tap](\u0001javascript:alert(1))',
	'[tap](java\tscript:alert(1))',
	'[tap](file:///etc/passwd)',
	'<data:text/html,<script>alert(1)</script>>',
	'\u202Etxt.exe',
];

describe('renderMarkdown', () => {
	it.each(ATTACKS)('makes %s harmless', (attack) => {
		const { html } = renderMarkdown(attack);
		expect(html).toMatch(HARMLESS);
	});

	it('never links to anything, and never shows an address that runs code', () => {
		expect(renderMarkdown('[tap](javascript:alert(1))').html).toBe('<p>tap</p>');
		expect(renderMarkdown('[tap][1]\n\n[1]: javascript:alert(1)').html).toBe('<p>tap</p>');
		expect(renderMarkdown('[tap](data:text/html,x)').plain).toBe('tap');
	});

	it('shows the address of a link behind its words, once', () => {
		expect(renderMarkdown('See [the paper](https://example.org/a?b=1&c=2).')).toEqual({
			html: '<p>See the paper (https://example.org/a?b=1&amp;c=2).</p>',
			plain: 'See the paper (https://example.org/a?b=1&c=2).',
		});
		expect(renderMarkdown('<https://example.org>').html).toBe('<p>https://example.org</p>');
		expect(renderMarkdown('[desk@example.org](mailto:desk@example.org)').plain).toBe('desk@example.org');
		expect(renderMarkdown('[The desk](mailto:desk@example.org)').plain).toBe('The desk (desk@example.org)');
	});

	it('leaves out pictures', () => {
		expect(renderMarkdown('A ![sharp](x.png) edge.').html).toBe('<p>A  edge.</p>');
	});

	it('keeps emphasis, lists, quotes and two levels of heading', () => {
		const text =
			'# One\n\n### Three\n\n###### Six\n\n*a* and **b**\n\n- c\n- d\n\n1. e\n\n> f\n\n---\n\ng  \nh';
		expect(renderMarkdown(text)).toEqual({
			html: [
				'<h3>One</h3>',
				'<h3>Three</h3>',
				'<h4>Six</h4>',
				'<p><em>a</em> and <strong>b</strong></p>',
				'<ul>\n<li>c</li>\n<li>d</li>\n</ul>',
				'<ol>\n<li>e</li>\n</ol>',
				'<blockquote>\n<p>f</p>\n</blockquote>',
				'<p>g<br />\nh</p>',
			].join('\n'),
			plain: 'One\nThree\nSix\na and b\nc\nd\ne\nf\ng\nh',
		});
	});

	it('shows signs of HTML as they were typed', () => {
		expect(renderMarkdown('Teeth < 5 mm & > 2 mm')).toEqual({
			html: '<p>Teeth &lt; 5 mm &amp; &gt; 2 mm</p>',
			plain: 'Teeth < 5 mm & > 2 mm',
		});
	});

	it('names no address of a picture, from here or from outside', () => {
		for (const text of [
			'A ![x](https://example.org/p.png) tooth.',
			'A ![x][p] tooth.\n\n[p]: https://example.org/p.png',
		])
			expect(renderMarkdown(text).html).not.toMatch(/example\.org|<img|src/);
	});

	it.each([
		['stars', '*'.repeat(50_000)],
		['open emphasis', '*a **b '.repeat(5_000)],
		['nested quotes', `${'>'.repeat(5_000)} x`],
		['nested lists', Array.from({ length: 400 }, (_, i) => `${'  '.repeat(i)}- x`).join('\n')],
		['open brackets', '['.repeat(20_000)],
		['brackets and links', '[a](b'.repeat(5_000)],
		['back quotes', '`'.repeat(20_000)],
		['one long line', 'tooth '.repeat(100_000)],
		['open pictures', '![a]('.repeat(5_000)],
	])('takes its time for no bomb: %s', (_name, bomb) => {
		const start = performance.now();
		expect(renderMarkdown(bomb).html).toMatch(/^[^]*$/);
		expect(renderMarkdown(bomb).html).not.toMatch(
			/<(?!\/?(?:p|em|strong|ul|ol|li|h3|h4|blockquote)>|br \/>)/,
		);
		// a few milliseconds each; a minute would be an attack
		expect(performance.now() - start).toBeLessThan(10_000);
	});

	it('is harmless whatever is put together (seed 20261125)', () => {
		const piece = fc.oneof(
			fc.constantFrom(...ATTACKS),
			fc.constantFrom(
				'[',
				']',
				'(',
				')',
				'<',
				'>',
				'!',
				'`',
				'*',
				'_',
				'\n',
				'\n\n',
				'&',
				'"',
				"'",
				'\\',
				'    ',
				'> ',
				'- ',
			),
			fc.string({ maxLength: 8 }),
		);
		fc.assert(
			fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
				expect(renderMarkdown(pieces.join('')).html).toMatch(HARMLESS);
			}),
			{ seed: 20261125, numRuns: 500 },
		);
	});
});
