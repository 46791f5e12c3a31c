// npm run export -- OUT_DIR: the whole visitor side as files for any web server, with or without a network.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { ROOT, bin, ensureBuilt, ensureInstalled, giveUp, run } from './setup.mjs';

const CONTENT_DIR = path.resolve(process.env.CONTENT_DIR ?? path.join(ROOT, 'content'));
const DATA_DIR = path.resolve(process.env.DATA_DIR ?? path.join(ROOT, 'data'));
if (!existsSync(CONTENT_DIR))
	giveUp(`There is no content folder at ${CONTENT_DIR}. Set CONTENT_DIR to yours.`);

ensureInstalled();
ensureBuilt();

// npm changes to the project's folder; a relative folder is meant from where the command was typed
const from = process.env.INIT_CWD ?? process.cwd();
const args = process.argv.slice(2).map((arg) => (arg.startsWith('-') ? arg : path.resolve(from, arg)));

process.exit(
	run(
		process.execPath,
		[bin('tsx', 'dist/cli.mjs'), path.join(ROOT, 'src/lib/server/export/exportExhibit.ts'), ...args],
		{ stdout: 'inherit', env: { CONTENT_DIR, DATA_DIR } },
	),
);
