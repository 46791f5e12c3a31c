import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { licenceFile, licencesNow, notLookedAt, shippedPackages } from '../../../src/scripts/licences.mjs';

const lock = {
	packages: {
		'': { version: '0.1.0', license: 'MIT' },
		'node_modules/b': { version: '2.0.0', license: 'ISC' },
		'node_modules/a': { version: '1.0.0', license: '(MIT OR Apache-2.0)' },
		'node_modules/b/node_modules/@x/c': { version: '3.0.0', license: 'GPL-3.0-only' },
		'node_modules/tool': { version: '9.0.0', license: 'UNKNOWN', dev: true },
		'node_modules/@y/d-linux': { version: '1.0.0', license: 'MIT', os: ['linux'] },
	},
};

it('lists what is shipped, not its tools', () => {
	expect(shippedPackages(lock).map(({ name, version }) => `${name} ${version}`)).toEqual([
		'@x/c 3.0.0',
		'@y/d-linux 1.0.0',
		'a 1.0.0',
		'b 2.0.0',
	]);
	expect(notLookedAt(shippedPackages(lock)).map(({ name }) => name)).toEqual(['@x/c']);
});

it('a text that packages share stands once; one built for a machine brings none', () => {
	const text = licenceFile(shippedPackages(lock), ({ name }) =>
		name === 'b' ? 'Other words' : 'Same words',
	);
	expect(text.match(/Same words/g)).toHaveLength(1);
	expect(text.match(/Other words/g)).toHaveLength(1);
	expect(text).toMatch(/-\n@x\/c 3\.0\.0\na 1\.0\.0\n-/);
});

it('static/licences.txt is that of the packages in the lock file, each under a licence that was looked at', () => {
	const { text, strange } = licencesNow();
	expect(strange).toEqual([]);
	const kept = readFileSync(path.resolve(import.meta.dirname, '../../../static/licences.txt'), 'utf8');
	expect(kept === text ? 'as it is' : 'run: npm run licences').toBe('as it is');
});
