// npm run content:check -- [DIR] [--json] [--lang fr]: every problem of a content folder, with file, line and remedy.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { ROOT, bin, ensureInstalled, run } from './setup.mjs';

ensureInstalled();

// npm changes to the project's folder; a relative folder is meant from where the command was typed
const from = process.env.INIT_CWD ?? process.cwd();
const absolute = (/** @type {string} */ folder) => {
	const here = path.resolve(folder);
	return existsSync(here) ? here : path.resolve(from, folder);
};
// what stands behind --lang is no folder
const args = process.argv
	.slice(2)
	.map((arg, i, all) => (arg.startsWith('-') || all[i - 1] === '--lang' ? arg : absolute(arg)));

process.exit(
	run(
		process.execPath,
		[bin('tsx', 'dist/cli.mjs'), path.join(ROOT, 'src/lib/server/contentCheck.ts'), ...args],
		{
			stdout: 'inherit',
			env: { CONTENT_DIR: absolute(process.env.CONTENT_DIR ?? path.join(ROOT, 'content')) },
		},
	),
);
