import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';

const LIB = path.resolve(__dirname, '../../src/lib');

function sources(folder: string): string[] {
	return readdirSync(path.join(LIB, folder), { recursive: true, encoding: 'utf8' })
		.filter((name) => /\.(ts|svelte)$/.test(name))
		.map((name) => path.join(folder, name));
}

/** What a file imports: packages by name, our own files by room. */
function imports(file: string): string[] {
	const text = readFileSync(path.join(LIB, file), 'utf8');
	const statement =
		/^\s*(?:import|export)\b[^;'"]*?from\s*['"]([^'"]+)['"]|^\s*import\s*['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/gm;
	return [...text.matchAll(statement)].map((match) => {
		const name = match[1] ?? match[2] ?? match[3];
		if (!name.startsWith('.')) return name;
		const target = path.join(path.dirname(file), name).replaceAll(path.sep, '/');
		return `room:${target.startsWith('domain/') ? target.split('/').slice(0, 2).join('/') : target.split('/')[0]}`;
	});
}

/** The rooms and packages that each room may use; itself is always allowed. */
const ALLOWED: Record<string, RegExp> = {
	'domain/mesh': /^(room:domain\/(vec3|result)|earcut|three-mesh-bvh|meshoptimizer|manifold-3d)$/,
	'domain/tooth': /^room:domain\/(vec3|result|mesh)$/,
	'domain/measure': /^room:domain\/(vec3|result|mesh|tooth)$/,
	'domain/feeding': /^room:domain\/(vec3|result|mesh|tooth|measure)$/,
	'domain/compare': /^room:domain\/(vec3|result|mesh|tooth|measure)$/,
	'domain/replacement': /^(room:domain\/(vec3|result|random|mesh|tooth|measure)|manifold-3d)$/,
	'domain/quiz': /^room:domain\/(random|compare|measure|mesh|tooth)$/,
	content:
		/^(room:domain\/.*|zod|yaml|markdown-it|sanitize-html|intl-messageformat|@formatjs\/.*|fastest-levenshtein)$/,
	stage: /^(room:domain\/.*|room:content|three|three\/.*|three-mesh-bvh|meshoptimizer)$/,
	// of a worker only the shapes of its messages
	kiosk: /^(room:(stage|content|workers|domain\/.*)|svelte|svelte\/.*|\$app\/.*|intl-messageformat)$/,
	ui: /^(room:(kiosk|stage|content|domain\/.*)|svelte|qrcode|diff|svelte-dnd-action|@codemirror\/.*|@lezer\/highlight|svelte\/.*|\$app\/.*)$/,
};

describe('arrows between the rooms', () => {
	for (const [room, allowed] of Object.entries(ALLOWED))
		it(`${room} imports only what lies below it`, () => {
			const files = sources(room);
			expect(files.length).toBeGreaterThan(0);
			const wrong = files.flatMap((file) =>
				imports(file)
					.filter((name) => name !== `room:${room}` && !allowed.test(name))
					.map((name) => `${file} -> ${name}`),
			);
			expect(wrong).toEqual([]);
		});

	it('three.js is imported by the stage and by the scan readers only', () => {
		const wrong = ['domain', 'content', 'kiosk', 'ui', 'server']
			.flatMap(sources)
			.filter((file) => !file.replaceAll(path.sep, '/').startsWith('server/scan/'))
			.filter((file) => imports(file).some((name) => name === 'three' || name.startsWith('three/')));
		expect(wrong).toEqual([]);
	});

	it('what screens load first does not pull three.js in: the stage proper comes by import() only', () => {
		/** Files of ours that a file imports by statement. */
		const ours = (file: string): string[] =>
			[
				...readFileSync(path.join(LIB, file), 'utf8').matchAll(
					/^\s*(?:import|export)\b(?! type)[^;'"]*?from\s*['"](\.[^'"]+)['"]/gm,
				),
			]
				.map(([, name]) => path.join(path.dirname(file), name))
				.map((name) => (/\.(svelte|svelte\.ts|ts)$/.test(name) ? name : `${name}.ts`))
				.map((name) => (existsSync(path.join(LIB, name)) ? name : name.replace(/\.svelte$/, '.svelte.ts')));
		const reached = new Set<string>();
		const pending = [...sources('ui'), ...sources('kiosk')];
		expect(pending.length).toBeGreaterThan(10);
		for (let file = pending.pop(); file !== undefined; file = pending.pop()) {
			if (reached.has(file)) continue;
			reached.add(file);
			pending.push(...ours(file));
		}
		const wrong = [...reached].filter((file) =>
			imports(file).some((name) => name === 'three' || name.startsWith('three/')),
		);
		expect(wrong).toEqual([]);
	});
});
