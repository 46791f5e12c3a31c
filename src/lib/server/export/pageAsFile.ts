import { policyHash } from '../liftStyles';

export interface Answer {
	html: string;
	/** `content-security-policy` */
	policy: string;
	/** `link`, what the page will need soon; empty for nothing */
	link: string;
}

export interface ExportLanguages {
	/** of this page */
	lang: string;
	/** all, the first first */
	all: readonly string[];
	/** way from this page to the export's root, as `./` or `../../` */
	root: string;
	/** path of the page from its language's folder, as `compare/` */
	room: string;
}

/** What a policy in a page cannot hold (CSP3, 3.3): the web server says it. */
const ONLY_IN_HEADERS = /^(frame-ancestors|report-uri|sandbox)\b/;
const INLINE_SCRIPT = /<script>([\s\S]*?)<\/script>/g;
/** How the page's own script begins the program with what the server has put into the page. */
const START = /kit\.start\(app, element, (\{[\s\S]*\})\);(\s*\}\);\s*\}\s*)$/;

/**
 * A page as a file: what the server says in headers stands in it, and it minds what a file cannot know, the address's
 * query. `?lang=` leads to the page of that language; any other query makes the program build the page from its data, as it
 * does when a visitor comes from another room, since what stands in the file was made without it. Throws where the page is
 * not built as is known here.
 */
export function pageAsFile(
	{ html, policy, link }: Answer,
	{ lang, all, root, room }: ExportLanguages,
): string {
	let started = 0;
	const whole = html.replace(INLINE_SCRIPT, (script, text: string) => {
		if (!START.test(text)) return script;
		started += 1;
		const ways = Object.fromEntries(
			all.map((code, index) => [code, `${root}${index === 0 ? '' : `${code}/`}${room}`]),
		);
		const body = text
			.replace(
				START,
				(_, hydrate: string, end: string) => `kit.start(app, element, asked ? undefined : ${hydrate});${end}`,
			)
			.replace(
				'const element = document.currentScript.parentElement;',
				(line) => `${line}
					const query = new URLSearchParams(location.search);
					const lang = query.get('lang');
					const ways = ${JSON.stringify(ways)};
					query.delete('lang');
					const asked = query.size > 0;
					if (lang !== null && lang !== ${JSON.stringify(lang)} && Object.hasOwn(ways, lang)) {
						element.replaceChildren();
						location.replace(new URL(ways[lang] + (asked ? '?' + String(query).replaceAll('%2C', ',') : '') + location.hash, location));
						return;
					}
					if (asked) element.replaceChildren();`,
			);
		if (body === text || !body.includes('const ways'))
			throw new Error('pageAsFile: the page does not begin as expected');
		return `<script>(() => ${body.trim()})();</script>`;
	});
	if (started !== 1) throw new Error(`pageAsFile: ${started} scripts begin the program, not one`);

	const scripts = [...whole.matchAll(INLINE_SCRIPT)].map(([, text]) => policyHash(text));
	const directives = policy
		.split(';')
		.map((directive) => directive.trim())
		.filter((directive) => directive !== '' && !ONLY_IN_HEADERS.test(directive))
		.map((directive) =>
			/^script-src\s/.test(directive)
				? [...directive.split(/\s+/).filter((part) => !part.startsWith("'sha256-")), ...scripts].join(' ')
				: directive,
		);
	const preloads = [...link.matchAll(/<([^>]+)>;\s*rel="modulepreload"/g)]
		.map(([, address]) => `<link rel="modulepreload" href="${address}" />`)
		.join('');
	const head =
		`<meta http-equiv="content-security-policy" content="${directives.join('; ')}" />` +
		'<meta name="referrer" content="no-referrer" />' +
		all
			.map((code, index) => {
				const way = `${root}${index === 0 ? '' : `${code}/`}${room}`;
				return `<link rel="alternate" hreflang="${code}" href="${way}" />`;
			})
			.join('') +
		preloads;
	// a policy holds only for what comes after it
	const framed = whole.replace(/<meta charset="utf-8" \/>/, (charset) => `${charset}${head}`);
	if (framed === whole) throw new Error('pageAsFile: the page has no <meta charset>');
	return framed;
}
