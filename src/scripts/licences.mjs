// npm run licences: writes static/licences.txt, the licences of everything that the exhibit ships, with their texts.
// Refuses a package whose licence nobody here has looked at.
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT, ensureInstalled } from './setup.mjs';

/** SPDX names of licences under which an exhibit may be given away together with its packages. */
const LOOKED_AT = [
	'0BSD',
	'Apache-2.0',
	'BSD-2-Clause',
	'BSD-3-Clause',
	'BlueOak-1.0.0',
	'ISC',
	'LGPL-3.0-or-later',
	'MIT',
	'OFL-1.1',
	'PSF-2.0',
	'Python-2.0',
	'Unlicense',
];

/** @typedef {{ name: string, version: string, licence: string, folder: string, forOneMachine: boolean }} Shipped */

/**
 * Every package of a lock file (version 3) that is not a tool only, by name and version.
 * @param {{ packages: Record<string, { version?: string, license?: string, dev?: boolean, os?: string[], cpu?: string[] }> }} lock
 * @returns {Shipped[]}
 */
export function shippedPackages(lock) {
	/** @type {Map<string, Shipped>} */
	const found = new Map();
	for (const [folder, { version = '', license = '', dev, os, cpu }] of Object.entries(lock.packages)) {
		if (folder === '' || dev) continue;
		const name = folder.slice(folder.lastIndexOf('node_modules/') + 'node_modules/'.length);
		found.set(`${name} ${version}`, {
			name,
			version,
			licence: license,
			folder,
			forOneMachine: Boolean(os || cpu),
		});
	}
	return [...found.values()].sort((a, b) =>
		a.name === b.name ? compare(a.version, b.version) : compare(a.name, b.name),
	);
}
const compare = (/** @type {string} */ a, /** @type {string} */ b) => (a < b ? -1 : a > b ? 1 : 0);

/** Packages whose licence is none of those looked at. @param {Shipped[]} shipped */
export function notLookedAt(shipped) {
	return shipped.filter(({ licence }) => {
		const names = licence.replace(/[()]/g, '').split(/ AND | OR /);
		return names.some((name) => !LOOKED_AT.includes(name));
	});
}

/**
 * The list, then the texts; a text that many packages share stands once.
 * @param {Shipped[]} shipped
 * @param {(one: Shipped) => string | null} textOf
 */
export function licenceFile(shipped, textOf) {
	/** @type {Map<string, string[]>} */
	const texts = new Map();
	for (const one of shipped) {
		// built for one kind of machine: its text would come and go with the machine that writes this file
		const text = one.forOneMachine ? null : textOf(one);
		if (text) texts.set(text, [...(texts.get(text) ?? []), `${one.name} ${one.version}`]);
	}
	const rule = '-'.repeat(78);
	return [
		'Tooth Table is given under the MIT licence. It ships these packages, each under its own licence.',
		'Written by "npm run licences" from package-lock.json.',
		'',
		...shipped.map(({ name, version, licence }) => `${name} ${version}: ${licence}`),
		...[...texts].flatMap(([text, names]) => ['', rule, ...names, rule, '', text.trim()]),
		'',
	].join('\n');
}

/** @param {Shipped} one */
function textIn({ folder }) {
	const full = path.join(ROOT, folder);
	if (!existsSync(full)) return null;
	const name = readdirSync(full)
		.sort()
		.find((file) => /^(licen[cs]e|copying)(\.(md|txt))?$/i.test(file));
	return name ? readFileSync(path.join(full, name), 'utf8').replace(/\r\n?/g, '\n') : null;
}

/** The file as it must be now. */
export function licencesNow() {
	const shipped = shippedPackages(JSON.parse(readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8')));
	return { text: licenceFile(shipped, textIn), strange: notLookedAt(shipped) };
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
	ensureInstalled();
	const { text, strange } = licencesNow();
	for (const { name, version, licence } of strange)
		process.stderr.write(
			`${name} ${version}: ${licence || 'no licence named'}. Look at it, then add it to src/scripts/licences.mjs, or do without.\n`,
		);
	if (strange.length) process.exit(1);
	writeFileSync(path.join(ROOT, 'static', 'licences.txt'), text);
	process.stderr.write('static/licences.txt is written.\n');
}
