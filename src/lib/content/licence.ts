/** Machine addresses of Creative Commons licences end in version (and country) and a slash; they are http. */
const CREATIVE_COMMONS =
	/^http:\/\/creativecommons\.org\/(licenses\/(by|by-sa|by-nd|by-nc|by-nc-sa|by-nc-nd)\/(1\.0|2\.0|2\.1|2\.5|3\.0|4\.0)\/([a-z]{2,3}\/)?|publicdomain\/(zero|mark)\/1\.0\/)$/;

/** The twelve statements of RightsStatements.org 1.0. */
export const STATEMENTS = [
	'InC',
	'InC-OW-EU',
	'InC-EDU',
	'InC-NC',
	'InC-RUU',
	'NoC-CR',
	'NoC-NC',
	'NoC-OKLR',
	'NoC-US',
	'NKC',
	'CNE',
	'UND',
] as const;

const statementAddress = (name: string) => `http://rightsstatements.org/vocab/${name}/1.0/`;

/** Whether `text` is an address that the `rights` of IIIF Presentation 3 may hold. */
export const isLicence = (text: string): boolean =>
	CREATIVE_COMMONS.test(text) || STATEMENTS.some((name) => text === statementAddress(name));

/** The address that was probably meant by "CC BY 4.0", "https://creativecommons.org/licenses/by/4.0/deed.en" or "InC". */
export function suggestLicence(text: string): string | undefined {
	const tidy = text.trim().replace(/\s+/g, ' ');
	const statement = STATEMENTS.find(
		(name) =>
			tidy.toLowerCase() === name.toLowerCase() ||
			new RegExp(`rightsstatements\\.org/(vocab|page)/${name}(/|$)`, 'i').test(tidy),
	);
	if (statement) return statementAddress(statement);
	if (/all rights reserved|copyright|©/i.test(tidy)) return statementAddress('InC');
	if (/^(cc[ -]?)?(0|zero)\b|cc0/i.test(tidy)) return 'http://creativecommons.org/publicdomain/zero/1.0/';
	if (/public ?domain/i.test(tidy))
		return `http://creativecommons.org/publicdomain/${/zero/.test(tidy) ? 'zero' : 'mark'}/1.0/`;
	const kind = /\bby(?:-(?:nc|nd|sa)|(?:[ -](?:nc|nd|sa)))*/i
		.exec(tidy)?.[0]
		.toLowerCase()
		.replace(/ /g, '-');
	if (!kind || !/\bcc\b|creativecommons|^by(-|\s*\d|$)/i.test(tidy)) return undefined;
	const version = /\b[1-4]\.[0-5]\b/.exec(tidy)?.[0] ?? '4.0';
	const address = `http://creativecommons.org/licenses/${kind}/${version}/`;
	return isLicence(address) ? address : undefined;
}

/** Addresses that are offered where a licence is chosen: Creative Commons in its newest version, then the statements. */
export const LICENCE_CHOICES: readonly string[] = [
	...['by', 'by-sa', 'by-nc', 'by-nc-sa', 'by-nd', 'by-nc-nd'].map(
		(kind) => `http://creativecommons.org/licenses/${kind}/4.0/`,
	),
	'http://creativecommons.org/publicdomain/zero/1.0/',
	'http://creativecommons.org/publicdomain/mark/1.0/',
	...STATEMENTS.map(statementAddress),
];

/**
 * A licence in short: `CC BY-SA 4.0`, `CC0 1.0`, `PDM 1.0`, or the statement's own short name, `InC`. null for an
 * address that is none.
 */
export function licenceName(address: string): { name: string; statement: boolean } | null {
	const statement = STATEMENTS.find((name) => statementAddress(name) === address);
	if (statement) return { name: statement, statement: true };
	if (!CREATIVE_COMMONS.test(address)) return null;
	const [, , , folder, kind, version, country] = address.split('/');
	if (folder === 'publicdomain')
		return { name: `${kind === 'zero' ? 'CC0' : 'PDM'} ${version}`, statement: false };
	const where = country ? ` ${country.toUpperCase()}` : '';
	return { name: `CC ${kind.toUpperCase()} ${version}${where}`, statement: false };
}
