import { describe, expect, it } from 'vitest';
import { policyHash } from '../../../src/lib/server/liftStyles';
import { securePage } from '../../../src/lib/server/securePage';

describe('securePage', () => {
	it("adds the page's own style element to its policy and nothing else", () => {
		const headers = new Headers({
			'content-security-policy':
				"default-src 'none'; style-src 'self'; style-src-attr 'none'; img-src 'self'",
		});
		securePage(headers, 'a{b:c}');
		expect(headers.get('content-security-policy')).toBe(
			`default-src 'none'; style-src 'self' ${policyHash('a{b:c}')}; style-src-attr 'none'; img-src 'self'`,
		);
	});

	it('leaves a page without styles alone', () => {
		const headers = new Headers({ 'content-security-policy': "style-src 'self'" });
		securePage(headers, '');
		expect(headers.get('content-security-policy')).toBe("style-src 'self'");
	});

	it('lets what is not a page do nothing', () => {
		const headers = new Headers();
		securePage(headers, '');
		expect(headers.get('content-security-policy')).toContain("default-src 'none'");
		expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
		expect(headers.get('x-content-type-options')).toBe('nosniff');
		expect(headers.get('referrer-policy')).toBe('no-referrer');
	});
});
