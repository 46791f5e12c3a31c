import { describe, expect, it } from 'vitest';
import {
	addressesInData,
	addressesInPage,
	addressesInStyles,
} from '../../../../src/lib/server/export/addressesIn';
import { danglingIn } from '../../../../src/lib/server/export/danglingIn';

const files = (all: Record<string, string>) =>
	new Map(Object.entries(all).map(([path, text]) => [path, new TextEncoder().encode(text)]));

describe('addressesIn', () => {
	it('finds what a page, its data and its styles name', () => {
		expect(
			addressesInPage(
				'<a href="./?a=1&amp;b=2"></a><a href="#x"></a><img src="p.webp" srcset="q.webp 2x, r.webp">',
			),
		).toEqual(['./?a=1&b=2', 'p.webp', 'q.webp', 'r.webp']);
		expect(
			addressesInData('["/shapes/ab.glb","/sounds/x/fr.mp3?v=1","see /shapes/none","/compare"]'),
		).toEqual(['/shapes/ab.glb', '/sounds/x/fr.mp3?v=1']);
		expect(addressesInStyles('a{b:url(./x.woff2)}c{d:url("data:,x")}e{f:url(\'y.svg\')}')).toEqual([
			'./x.woff2',
			'y.svg',
		]);
	});
});

describe('danglingIn', () => {
	const good = {
		'index.html': '<link href="./_app/a.css"><a href="fr/?teeth=a"></a><img src="./pictures/p.webp">',
		'__data.json': '["/pictures/p.webp"]',
		'fr/index.html': '<a href="../"></a><script src="../_app/a.js"></script>',
		'_app/a.css': 'a{b:url(./f.woff2)}',
		'_app/a.js': 'import"./b.js";const m=["./a.css"]',
		'_app/b.js': 'export const x="./notes"',
		'_app/f.woff2': '',
		'pictures/p.webp': '',
	};

	it('finds nothing in a good export', () => {
		expect(danglingIn(files(good))).toEqual([]);
	});

	it.each([
		['index.html', '<a href="quiz/">', 'index.html: quiz/ is missing'],
		['index.html', '<a href="/compare">', 'index.html: /compare leads out of the export'],
		[
			'index.html',
			'<img src="https://outside.example/a">',
			'index.html: https://outside.example/a leads out of the export',
		],
		['__data.json', '["/shapes/s.glb"]', '__data.json: /shapes/s.glb is missing'],
		['_app/a.css', 'a{b:url(g.woff2)}', '_app/a.css: g.woff2 is missing'],
		['_app/a.js', 'import("./c.js")', '_app/a.js: ./c.js is missing'],
	])('names what is not there: %s %s', (file, text, problem) => {
		expect(danglingIn(files({ ...good, [file]: text }))).toEqual([problem]);
	});
});
