import { afterEach, describe, expect, it, vi } from 'vitest';
import { reroute } from '../../src/hooks';

const at = (path: string) => reroute({ url: new URL(path, 'http://localhost:4173'), fetch });

describe('reroute', () => {
	afterEach(() => void vi.unstubAllEnvs());

	it('knows no folders of languages on a server in a gallery: they would be a second way to a page', () => {
		for (const path of ['/fr/desk', '/fr/compare/', '/compare']) expect(at(path), path).toBe(undefined);
	});

	it('leads from a language’s folder to the same room while an export is written', () => {
		vi.stubEnv('EXHIBIT_EXPORT', '1');
		expect(at('/fr/compare/')).toBe('/compare/');
		expect(at('/fr/')).toBe('/');
		expect(at('/fr')).toBe('/');
		expect(at('/es/quiz/sheet/')).toBe('/quiz/sheet/');
		expect(at('/compare/')).toBe(undefined);
		expect(at('/')).toBe(undefined);
	});
});
