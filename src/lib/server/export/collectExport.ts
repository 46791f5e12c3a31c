import { unflatten } from 'devalue';
import { addressesInData, addressesInPage } from './addressesIn';
import { pageAsFile } from './pageAsFile';

export interface CollectOptions {
	/** asks the running server, which knows that it is asked for an export */
	get: (path: string) => Promise<Response>;
	/** what the program consists of in the browser, by path from the root */
	program: ReadonlyMap<string, Uint8Array>;
}

export interface Collected {
	files: Map<string, Uint8Array>;
	exhibit: string;
	code: string;
	languages: string[];
	pages: number;
}

interface Frame {
	hash: string;
	languages: { code: string }[];
	rooms: string[];
}

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
/** Rooms within rooms that no page may lead to at first. */
const INNER: Readonly<Record<string, readonly string[]>> = { quiz: ['quiz/sheet/'] };

/**
 * Every file of the visitor side: the program, every page in every language with its data, and what they name. Pages are
 * those of the open rooms and all that they lead to. Throws where the server has no exhibit or does not give what a page
 * names.
 */
export async function collectExport({ get, program }: CollectOptions): Promise<Collected> {
	const files = new Map(program);
	const must = async (path: string): Promise<Response> => {
		const answer = await get(path);
		if (!answer.ok) throw new Error(`The server answered ${answer.status} for ${path}`);
		return answer;
	};
	const frame = frameOf(await (await must('/__data.json')).text());
	const languages = frame.languages.map(({ code }) => code);
	const code = (JSON.parse(new TextDecoder().decode(program.get('_app/version.json'))) as { version: string })
		.version;

	const rooms = ['', ...frame.rooms.flatMap((room) => [`${room}/`, ...(INNER[room] ?? [])])];
	let pages = 0;
	for (let room = rooms.shift(); room !== undefined; room = rooms.shift()) {
		for (const [index, lang] of languages.entries()) {
			const folder = `${index === 0 ? '' : `${lang}/`}${room}`;
			const answer = await must(`/${folder}`);
			const html = await answer.text();
			const page = pageAsFile(
				{
					html,
					policy: answer.headers.get('content-security-policy') ?? '',
					link: answer.headers.get('link') ?? '',
				},
				{ lang, all: languages, root: '../'.repeat(folder.split('/').length - 1) || './', room },
			);
			files.set(`${folder}index.html`, bytesOf(page));
			const data = await (await must(`/${folder}__data.json`)).text();
			files.set(`${folder}__data.json`, bytesOf(data));
			pages += 1;

			for (const address of [...addressesInPage(html), ...addressesInData(data)]) {
				const { pathname } = new URL(address, `http://exhibit/${folder}`);
				const path = decodeURIComponent(pathname.slice(1));
				if (files.has(path)) continue;
				if (path === '' || path.endsWith('/')) {
					const own = languages.slice(1).find((other) => path.startsWith(`${other}/`));
					const found = own === undefined ? path : path.slice(own.length + 1);
					if (!rooms.includes(found) && found !== room && !files.has(`${found}index.html`)) rooms.push(found);
				} else files.set(path, new Uint8Array(await (await must(pathname)).arrayBuffer()));
			}
		}
	}
	return { files, exhibit: frame.hash, code, languages, pages };
}

/** What every page needs, out of the data of the start screen. */
function frameOf(data: string): Frame {
	const { nodes } = JSON.parse(data) as { nodes: { data: unknown[] }[] };
	const { frame } = unflatten(nodes[0].data) as { frame: Frame | null };
	if (!frame) throw new Error('There is no exhibit to write: npm run content:check says why');
	return frame;
}
