// A hash over everything that the built program is made of: the same sources give the same name.
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const MADE_OF = ['src', 'static', 'svelte.config.js', 'vite.config.ts', 'package-lock.json'];

/** @param {string} entry @param {import('node:crypto').Hash} hash */
function add(entry, hash) {
	const full = path.join(ROOT, entry);
	if (!existsSync(full)) return;
	if (statSync(full).isDirectory()) {
		for (const name of readdirSync(full).sort()) add(path.join(entry, name), hash);
		return;
	}
	hash.update(entry).update('\0').update(readFileSync(full)).update('\0');
}

/** @returns {string} 64 hexadecimal digits */
export function sourcesHash() {
	const hash = createHash('sha256');
	for (const entry of MADE_OF) add(entry, hash);
	return hash.digest('hex');
}
