import { describe, expect, it } from 'vitest';
import { isLicence, LICENCE_CHOICES, licenceName, STATEMENTS } from '../../../src/lib/content/licence';

describe('licenceName', () => {
	it.each([
		['http://creativecommons.org/licenses/by/4.0/', 'CC BY 4.0', false],
		['http://creativecommons.org/licenses/by-nc-sa/3.0/de/', 'CC BY-NC-SA 3.0 DE', false],
		['http://creativecommons.org/publicdomain/zero/1.0/', 'CC0 1.0', false],
		['http://creativecommons.org/publicdomain/mark/1.0/', 'PDM 1.0', false],
		['http://rightsstatements.org/vocab/InC-EDU/1.0/', 'InC-EDU', true],
	])('%s is %s', (address, name, statement) => {
		expect(licenceName(address)).toEqual({ name, statement });
	});

	it('knows every choice that is offered, and nothing else', () => {
		for (const address of LICENCE_CHOICES) {
			expect(isLicence(address), address).toBe(true);
			expect(licenceName(address), address).not.toBeNull();
		}
		// six Creative Commons licences, its two marks, and the twelve statements
		expect(LICENCE_CHOICES).toHaveLength(6 + 2 + STATEMENTS.length);
		expect(STATEMENTS).toHaveLength(12);
		expect(licenceName('https://creativecommons.org/licenses/by/4.0/')).toBeNull();
		expect(licenceName('all mine')).toBeNull();
	});
});
