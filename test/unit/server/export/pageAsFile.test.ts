import { describe, expect, it } from 'vitest';
import { policyHash } from '../../../../src/lib/server/liftStyles';
import { pageAsFile } from '../../../../src/lib/server/export/pageAsFile';

const page = (start: string) => `<!doctype html>
<html lang="fr"><head><meta charset="utf-8" /><link href="../../_app/a.css" rel="stylesheet"></head>
<body><div class="app">words
			<script>
				{
					__sveltekit_x = {
						base: new URL("../..", location).pathname.slice(0, -1)
					};

					const element = document.currentScript.parentElement;

					Promise.all([
						import("../../_app/start.js"),
						import("../../_app/app.js")
					]).then(([kit, app]) => {
						${start}
					});
				}
			</script>
</div></body></html>`;
const START = 'kit.start(app, element, {\n node_ids: [0, 3],\n data: [{a:"});"}]\n });';
const policy =
	"default-src 'none'; script-src 'self' 'sha256-OLD='; style-src 'self' 'sha256-STYLE='; frame-ancestors 'none'";
const link =
	'<../../_app/a.css>; rel="preload"; as="style"; nopush, <../../_app/start.js>; rel="modulepreload"; nopush';
const languages = { lang: 'fr', all: ['en', 'fr'], root: '../../', room: 'compare/' };
const scriptOf = (html: string) => /<script>([\s\S]*)<\/script>/.exec(html)?.[1] ?? '';

/** Runs the page's own script at an address, as a browser would. */
async function run(html: string, href: string) {
	const seen = { started: null as unknown[] | null, cleared: false, went: null as string | null };
	const location = Object.assign(new URL(href), { replace: (to: URL) => (seen.went = to.href) });
	const document = { currentScript: { parentElement: { replaceChildren: () => (seen.cleared = true) } } };
	const kit = { start: (...all: unknown[]) => (seen.started = all) };
	const body = scriptOf(html)
		.replace(/__sveltekit_x/, 'globalThis.__made')
		.replaceAll('import(', 'load(');
	new Function('location', 'document', 'load', body)(location, document, () => Promise.resolve(kit));
	await new Promise((done) => setTimeout(done, 0));
	return seen;
}

describe('pageAsFile', () => {
	const file = pageAsFile({ html: page(START), policy, link }, languages);

	it('holds the policy of its own scripts, before anything that it is about', () => {
		const [, held] = /http-equiv="content-security-policy" content="([^"]*)"/.exec(file) ?? [];
		expect(held).toBe(
			`default-src 'none'; script-src 'self' ${policyHash(scriptOf(file))}; style-src 'self' 'sha256-STYLE='`,
		);
		expect(file.indexOf('http-equiv')).toBeLessThan(file.indexOf('stylesheet'));
		expect(file).toContain('<link rel="modulepreload" href="../../_app/start.js" />');
		expect(file).not.toContain('rel="preload"');
	});

	it('names itself in every language', () => {
		expect(file).toContain('<link rel="alternate" hreflang="en" href="../../compare/" />');
		expect(file).toContain('<link rel="alternate" hreflang="fr" href="../../fr/compare/" />');
	});

	it('comes to life as it is without a query', async () => {
		const seen = await run(file, 'http://localhost/teeth/fr/compare/');
		expect(seen).toMatchObject({ cleared: false, went: null });
		expect(seen.started?.[2]).toMatchObject({ node_ids: [0, 3], data: [{ a: '});' }] });
	});

	it('is built anew from its data with one', async () => {
		for (const query of ['?teeth=a,b', '?teeth=a&lang=fr']) {
			const seen = await run(file, `http://localhost/teeth/fr/compare/${query}`);
			expect(seen).toMatchObject({ cleared: true, went: null });
			expect(seen.started).toHaveLength(3);
			expect(seen.started?.[2]).toBe(undefined);
		}
	});

	it('leads to the language that is asked for', async () => {
		const at = 'http://localhost/teeth/fr/compare/';
		expect(await run(file, `${at}?teeth=a,b&lang=en`)).toMatchObject({
			started: null,
			went: 'http://localhost/teeth/compare/?teeth=a,b',
		});
		expect((await run(file, `${at}?lang=en#x`)).went).toBe('http://localhost/teeth/compare/#x');
		for (const lang of ['fr', 'xx', 'constructor', ''])
			expect((await run(file, `${at}?lang=${lang}`)).went, lang).toBe(null);
	});

	it('gives up where the page begins in another way', () => {
		expect(() => pageAsFile({ html: page('kit.begin();'), policy, link }, languages)).toThrow(/0 scripts/);
		const other = page(START).replace('const element', 'let element');
		expect(() => pageAsFile({ html: other, policy, link }, languages)).toThrow(/as expected/);
	});
});
