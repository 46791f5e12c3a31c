import { describe, expect, it } from 'vitest';
import { isLicence, suggestLicence } from '../../../src/lib/content/licence';

// `rights` of IIIF Presentation 3.0: Creative Commons or RightsStatements.org addresses, with http and the last slash.
// The twelve statements: RightsStatements.org 1.0.
const STATEMENTS = 'InC InC-OW-EU InC-EDU InC-NC InC-RUU NoC-CR NoC-NC NoC-OKLR NoC-US NKC CNE UND'.split(
	' ',
);

describe('licence', () => {
	it.each([
		...STATEMENTS.map((name) => `http://rightsstatements.org/vocab/${name}/1.0/`),
		'http://creativecommons.org/licenses/by/4.0/',
		'http://creativecommons.org/licenses/by-nc-sa/3.0/us/',
		'http://creativecommons.org/publicdomain/zero/1.0/',
		'http://creativecommons.org/publicdomain/mark/1.0/',
	])('knows %s', (address) => {
		expect(isLicence(address)).toBe(true);
	});

	it.each(STATEMENTS)('takes %s only as machines know it: http, vocab, and a slash at the end', (name) => {
		const right = `http://rightsstatements.org/vocab/${name}/1.0/`;
		expect(isLicence(right.replace('http:', 'https:'))).toBe(false);
		expect(isLicence(right.slice(0, -1))).toBe(false);
		expect(isLicence(right.replace('/vocab/', '/page/'))).toBe(false);
		expect(suggestLicence(right.replace('http:', 'https:'))).toBe(right);
	});

	// SPDX: CC0-1.0, CC-BY-4.0, CC-BY-SA-4.0, CC-BY-NC-4.0, CC-BY-NC-SA-4.0, CC-BY-ND-4.0, CC-BY-NC-ND-4.0
	it.each(['by', 'by-sa', 'by-nd', 'by-nc', 'by-nc-sa', 'by-nc-nd'])(
		'knows CC %s, and no other way to write it',
		(kind) => {
			const right = `http://creativecommons.org/licenses/${kind}/4.0/`;
			expect(isLicence(right)).toBe(true);
			expect(isLicence(right.replace('http:', 'https:'))).toBe(false);
			expect(isLicence(`${right}deed.en`)).toBe(false);
			expect(suggestLicence(`${right}deed.en`)).toBe(right);
		},
	);

	it.each([
		['CC BY 4.0', 'http://creativecommons.org/licenses/by/4.0/'],
		['CC-BY-SA-3.0', 'http://creativecommons.org/licenses/by-sa/3.0/'],
		['cc by-nc-nd', 'http://creativecommons.org/licenses/by-nc-nd/4.0/'],
		['CC0', 'http://creativecommons.org/publicdomain/zero/1.0/'],
		['https://creativecommons.org/licenses/by/4.0/', 'http://creativecommons.org/licenses/by/4.0/'],
		['http://creativecommons.org/licenses/by/4.0', 'http://creativecommons.org/licenses/by/4.0/'],
		['https://creativecommons.org/licenses/by/4.0/deed.fr', 'http://creativecommons.org/licenses/by/4.0/'],
		[
			'https://creativecommons.org/publicdomain/zero/1.0/',
			'http://creativecommons.org/publicdomain/zero/1.0/',
		],
		[
			'https://rightsstatements.org/page/InC-NC/1.0/?language=fr',
			'http://rightsstatements.org/vocab/InC-NC/1.0/',
		],
		['All rights reserved', 'http://rightsstatements.org/vocab/InC/1.0/'],
		['© Skerrow Museum 2026', 'http://rightsstatements.org/vocab/InC/1.0/'],
		['inc', 'http://rightsstatements.org/vocab/InC/1.0/'],
	])('refuses %s and suggests %s', (typed, meant) => {
		expect(isLicence(typed)).toBe(false);
		expect(suggestLicence(typed)).toBe(meant);
	});

	it.each(['MIT', 'by the museum', ''])('has no suggestion for "%s"', (typed) => {
		expect(isLicence(typed)).toBe(false);
		expect(suggestLicence(typed)).toBeUndefined();
	});
});
