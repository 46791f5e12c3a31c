import { describe, expect, it } from 'vitest';
import { liftStyles, policyHash } from '../../../src/lib/server/liftStyles';

describe('liftStyles', () => {
	it('turns equal attributes into one rule', () => {
		const { html, css } = liftStyles(
			'<p style="--w: 3;">a</p><img src="x" style="--w: 3;"/><i style="top: 1px">',
		);
		expect(html).toBe('<p data-lifted="0">a</p><img src="x" data-lifted="0"/><i data-lifted="1">');
		expect(css).toBe('[data-lifted="0"]:not(#_#_#_){--w: 3;}\n[data-lifted="1"]:not(#_#_#_){top: 1px}');
	});

	it('leaves text, scripts, styles and other attributes as they are', () => {
		for (const html of [
			'<p>a style="x: y" b</p>',
			'<script>const a = \'<p style="x: y">\';</script>',
			'<style>a[style="x"]{}</style>',
			'<p title=" style=">a</p>',
			`<p title='a style="x: y"'>a</p>`,
			'<p data-style="x: y">a</p>',
			'<!-- note --><p class="style">a</p>',
		])
			expect(liftStyles(html)).toEqual({ html, css: '' });
	});

	it('does not let a value out of its rule or element', () => {
		for (const value of ['}body{display:none', '&lt;/style&gt;', '{', ''])
			expect(liftStyles(`<p style="${value}">a</p>`)).toEqual({ html: '<p>a</p>', css: '' });
	});

	it('reads what was escaped', () => {
		expect(liftStyles('<p style="font: &quot;A &amp; B&quot;">').css).toContain('{font: "A & B"}');
	});

	it('takes little time over a large page', () => {
		const from = performance.now();
		liftStyles('<p style="a: b">'.repeat(50_000));
		expect(performance.now() - from).toBeLessThan(5_000);
	});
});

describe('policyHash', () => {
	it('is the hash of the example in CSP3', () => {
		// the hash of this very text in CSP3's section on 'unsafe-hashes' [memory]; it is that of any SHA-256
		expect(policyHash('doSubmit()')).toBe("'sha256-jzgBGA4UWFFmpOBq0JpdsySukE1FrEN5bUpoK8Z29fY='");
	});
});
