import { describe, expect, it } from 'vitest';
import { readDrawing } from '../../../src/lib/content/readDrawing';

const idsOf = (text: string) => readDrawing(text).findings.map(({ id }) => id);

describe('readDrawing', () => {
	it('takes over the sheet and the outlines, and nothing else', () => {
		const { drawing, findings } = readDrawing(`<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg>
<!-- drawn by us -->
<svg xmlns="http://www.w3.org/2000/svg" xmlns:pen="http://example.org/pen" viewBox="0 -10.5 1000 200" width="100mm">
	<title>A lizard</title>
	<metadata><script>never read</script></metadata>
	<pen:view zoom="2"><pen:page/></pen:view>
	<g id="body" fill="none">
		<path id="near" fill="#000" d="M0 0
			L10 5Z"/>
		<path d='M1 1h2'></path>
	</g>
</svg>
`);
		expect(findings).toEqual([]);
		expect(drawing).toEqual({ viewBox: [0, -10.5, 1000, 200], paths: ['M0 0 L10 5Z', 'M1 1h2'] });
	});

	it.each([
		['an open element', '<svg viewBox="0 0 1 1"><g></svg>'],
		['an open comment', '<svg viewBox="0 0 1 1"/><!-- '],
		['an unquoted attribute', '<svg viewBox="0 0 1 1"><path d=M0/></svg>'],
		['another document', '<html></html>'],
		['two documents', '<svg viewBox="0 0 1 1"/><svg viewBox="0 0 1 1"/>'],
		['words outside', '<svg viewBox="0 0 1 1"/> more'],
		['entities of its own', '<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 1 1"/>'],
		['a processing instruction', '<svg viewBox="0 0 1 1"><?php 1 ?></svg>'],
	])('is no SVG with %s', (_, text) => {
		expect(idsOf(text)).toEqual(['drawing-not-svg']);
	});

	it.each(['0 0 10', '0 0 0 10', '0 0 10 -1', '0 0 x 1', '0 0 Infinity 1'])(
		'wants four numbers for the sheet, not "%s"',
		(box) => {
			expect(idsOf(`<svg viewBox="${box}"><path d="M0 0L1 1"/></svg>`)).toEqual(['drawing-viewbox']);
		},
	);

	it('names every forbidden part with its line', () => {
		const { drawing, findings } = readDrawing(`<svg viewBox="0 0 9 9" onload="run()">
<path d="M0 0L1 1" style="fill:url(#a)"/>
<use xlink:href="http://example.org/x.svg"/>
<text>words</text>
</svg>`);
		expect(drawing).toBeNull();
		expect(findings.map(({ line, column, message }) => [line, column, message])).toEqual([
			[1, 24, 'The drawing holds a script; only outlines (paths) are used here.'],
			[2, 20, 'The drawing holds a style; only outlines (paths) are used here.'],
			[3, 1, 'The drawing holds a link; only outlines (paths) are used here.'],
			[3, 6, 'The drawing holds a link; only outlines (paths) are used here.'],
			[4, 1, 'The drawing holds lettering; only outlines (paths) are used here.'],
		]);
	});
});
