import { createHash } from 'node:crypto';

/** A tag with its attributes, or a whole script or style element, whose text is nobody's business here. */
const PIECE = /<(script|style)\b[\s\S]*?<\/\1>|<[a-z][\w:-]*(?:[^"'>]|"[^"]*"|'[^']*')*>/gi;
const STYLE = /(\s)style="([^"]*)"/i;
/** Every attribute of a tag: only a name that stands where names stand is one. */
const ATTRIBUTE = /\s[^\s=>"'/]+(?:\s*=\s*(?:"[^"]*"|'[^']*'))?/g;
/** What could end the rule that it becomes, or the element around it. */
const ENDS = /[{}<]/;

/**
 * Takes `style` attributes out of a page made on the server, so that its policy needs no unsafe-inline: each becomes a
 * rule for the elements that had it. `css` is empty where there were none. A value that could end its rule is left out;
 * the page's script sets it soon after.
 */
export function liftStyles(html: string): { html: string; css: string } {
	const rules = new Map<string, number>();
	const lifted = html.replace(PIECE, (piece) => {
		if (/^<(script|style)\b/i.test(piece) || !STYLE.test(piece)) return piece;
		return piece.replace(ATTRIBUTE, (attribute) => {
			const found = STYLE.exec(attribute);
			if (!found || found.index !== 0) return attribute;
			const value = plain(found[2]).trim();
			if (value === '' || ENDS.test(value)) return '';
			if (!rules.has(value)) rules.set(value, rules.size);
			return `${found[1]}data-lifted="${rules.get(value)}"`;
		});
	});
	// as strong as the attribute was: three ids outweigh any rule of ours
	const css = [...rules].map(([value, id]) => `[data-lifted="${id}"]:not(#_#_#_){${value}}`).join('\n');
	return { html: lifted, css };
}

/** The value of an attribute as it was meant. */
const plain = (value: string): string =>
	value.replaceAll('&quot;', '"').replaceAll('&#39;', "'").replaceAll('&lt;', '<').replaceAll('&amp;', '&');

/** How a policy names a style or script element by what stands in it (CSP3, 2.3.1). */
export const policyHash = (text: string): string =>
	`'sha256-${createHash('sha256').update(text).digest('base64')}'`;
