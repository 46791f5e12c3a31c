import MarkdownIt, { type Token } from 'markdown-it';
import sanitizeHtml from 'sanitize-html';

export interface RenderedMarkdown {
	/** safe HTML: paragraphs, headings (h3, h4), emphasis and lists, nothing else */
	html: string;
	/** the same as plain text, paragraphs on lines of their own */
	plain: string;
}

const ALLOWED_TAGS = ['p', 'br', 'em', 'strong', 'ul', 'ol', 'li', 'h3', 'h4', 'blockquote', 'sup', 'sub'];

/** Addresses that are worth reading aloud; any other (`javascript:` and the like) is left out. */
const SHOWN_ADDRESS = /^(https?:\/\/|mailto:)/i;

const markdown = new MarkdownIt('commonmark', {
	html: false,
	linkify: false,
	typographer: false,
	maxNesting: 20,
});
// every link is taken apart below, so none has to be refused and shown in brackets
markdown.validateLink = () => true;
markdown.normalizeLink = (url) => url;
markdown.renderer.rules.link_open = () => '';
markdown.renderer.rules.link_close = (tokens, index) => {
	const address = addressAfter(tokens, index);
	return address ? ` (${markdown.utils.escapeHtml(address)})` : '';
};
markdown.renderer.rules.image = () => '';
markdown.renderer.rules.code_inline = (tokens, index) => markdown.utils.escapeHtml(tokens[index].content);
const codeBlock = (tokens: Token[], index: number) =>
	`<p>${markdown.utils.escapeHtml(tokens[index].content.trim())}</p>\n`;
markdown.renderer.rules.code_block = codeBlock;
markdown.renderer.rules.fence = codeBlock;
markdown.renderer.rules.hr = () => '';

/**
 * A label's Markdown as safe HTML and as plain text. A gallery screen has no way out, so a link becomes its words
 * with the address behind them; pictures and HTML are not let through.
 */
export function renderMarkdown(text: string): RenderedMarkdown {
	const tokens = markdown.parse(text, {});
	const html = sanitizeHtml(markdown.renderer.render(tokens, markdown.options, {}), {
		allowedTags: ALLOWED_TAGS,
		allowedAttributes: {},
		allowedSchemes: [],
		disallowedTagsMode: 'escape',
		transformTags: { h1: 'h3', h2: 'h3', h5: 'h4', h6: 'h4' },
	}).trim();
	return {
		html,
		plain: tokens.map(plainBlock).filter(Boolean).join('\n'),
	};
}

function plainBlock(token: Token): string {
	if (token.type === 'fence' || token.type === 'code_block') return token.content.trim();
	if (token.type !== 'inline') return '';
	const children = token.children ?? [];
	return children
		.map((child, i) => {
			if (child.type === 'text' || child.type === 'code_inline') return child.content;
			if (child.type === 'softbreak') return ' ';
			if (child.type === 'hardbreak') return '\n';
			if (child.type === 'link_close') {
				const address = addressAfter(children, i);
				return address ? ` (${address})` : '';
			}
			return '';
		})
		.join('')
		.trim();
}

/** The address of the link that closes here, unless it is unfit or the link's own words. */
function addressAfter(tokens: Token[], close: number): string | null {
	for (let i = close - 1; i >= 0; i--) {
		if (tokens[i].type !== 'link_open') continue;
		const address = String(tokens[i].attrGet('href') ?? '');
		const words = tokens.slice(i + 1, close).map((token) => token.content);
		if (!SHOWN_ADDRESS.test(address)) return null;
		const shown = address.replace(/^mailto:/i, '');
		return words.join('') === shown ? null : shown;
	}
	return null;
}

/** Blocks of running text with the line (from 0) on which each begins. */
export function textBlocks(text: string): { line: number; content: string }[] {
	return markdown
		.parse(text, {})
		.filter((token) => token.type === 'inline' && token.map !== null)
		.map((token) => ({ line: token.map![0], content: token.content }));
}
