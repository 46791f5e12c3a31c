import { describe, expect, it } from 'vitest';
import { openToWeb } from '../../../../src/lib/server/iiif/openToWeb';
import { securePage } from '../../../../src/lib/server/securePage';

const opened = (address: string | undefined): Headers => {
	const { headers } = openToWeb(new Response('x'), address);
	// every answer passes through this last
	securePage(headers, '');
	return headers;
};

describe('openToWeb', () => {
	it('lets other sites show what a manifest names, where the exhibit stands on the web', () => {
		const headers = opened('https://teeth.skerrow.example');
		expect(headers.get('access-control-allow-origin')).toBe('*');
		expect(headers.get('cross-origin-resource-policy')).toBe('cross-origin');
	});
	it('keeps everything to this site elsewhere', () => {
		const headers = opened(undefined);
		expect(headers.has('access-control-allow-origin')).toBe(false);
		expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
	});
});
