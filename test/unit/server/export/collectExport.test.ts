import { stringify } from 'devalue';
import { describe, expect, it } from 'vitest';
import { collectExport } from '../../../../src/lib/server/export/collectExport';

const text = (bytes?: Uint8Array) => new TextDecoder().decode(bytes);

function server(frame: object | null, links: Record<string, string> = {}) {
	const asked: string[] = [];
	const node = JSON.parse(stringify({ frame })) as unknown[];
	const get = (path: string): Promise<Response> => {
		asked.push(path);
		const room = path.replace(/^\/(fr\/)?/, '');
		if (/missing/.test(path)) return Promise.resolve(new Response('', { status: 404 }));
		if (path.endsWith('__data.json'))
			return Promise.resolve(
				new Response(JSON.stringify({ nodes: [{ type: 'data', data: node }, { data: ['/shapes/s.glb'] }] })),
			);
		if (!path.endsWith('/')) return Promise.resolve(new Response(`file ${path}`));
		const html = `<meta charset="utf-8" />${links[room] ?? ''}<script>
			{
				const element = document.currentScript.parentElement;
				load().then(([kit, app]) => {
					kit.start(app, element, {});
				});
			}
		</script>`;
		return Promise.resolve(
			new Response(html, { headers: { 'content-security-policy': "script-src 'self'", link: '' } }),
		);
	};
	const program = new Map([['_app/version.json', new TextEncoder().encode('{"version":"v7"}')]]);
	return { asked, collect: () => collectExport({ get, program }) };
}
const frame = { hash: 'h', languages: [{ code: 'en' }, { code: 'fr' }], rooms: ['compare', 'quiz'] };

describe('collectExport', () => {
	it('gets every open room in every language with its data, and what they name', async () => {
		const { collect } = server(frame, {
			'': '<a href="./compare/?teeth=a"></a><img src="./pictures/p.webp">',
		});
		const { files, exhibit, code, languages, pages } = await collect();
		expect({ exhibit, code, languages, pages }).toEqual({
			exhibit: 'h',
			code: 'v7',
			languages: ['en', 'fr'],
			pages: 8,
		});
		const rooms = ['', 'compare/', 'quiz/', 'quiz/sheet/'];
		const expected = ['', 'fr/'].flatMap((lang) =>
			rooms.flatMap((room) => [`${lang}${room}index.html`, `${lang}${room}__data.json`]),
		);
		expect([...files.keys()].sort()).toEqual(
			[...expected, '_app/version.json', 'shapes/s.glb', 'pictures/p.webp', 'fr/pictures/p.webp'].sort(),
		);
		expect(text(files.get('shapes/s.glb'))).toBe('file /shapes/s.glb');
		expect(text(files.get('fr/quiz/sheet/index.html'))).toContain('href="../../../quiz/sheet/"');
	});

	it('follows a page to a room that no list names', async () => {
		const { collect } = server({ ...frame, rooms: ['compare'] }, { 'compare/': '<a href="../talks/">' });
		const { files } = await collect();
		expect(files.has('talks/index.html')).toBe(true);
		expect(files.has('fr/talks/__data.json')).toBe(true);
		expect(files.has('quiz/index.html')).toBe(false);
	});

	it('gives up where something is missing, or where there is no exhibit', async () => {
		await expect(server(frame, { '': '<img src="./missing.webp">' }).collect()).rejects.toThrow(
			'The server answered 404 for /missing.webp',
		);
		await expect(server(null).collect()).rejects.toThrow(/no exhibit/);
	});
});
