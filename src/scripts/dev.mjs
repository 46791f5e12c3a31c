// npm run dev: the same exhibit with hot reload.
import path from 'node:path';
import { ROOT, bin, ensureInstalled, run } from './setup.mjs';

ensureInstalled();
process.exit(
	run(process.execPath, [bin('vite', 'bin/vite.js'), 'dev', ...process.argv.slice(2)], {
		stdout: 'inherit',
		env: {
			CONTENT_DIR: path.resolve(process.env.CONTENT_DIR ?? path.join(ROOT, 'content')),
			DATA_DIR: path.resolve(process.env.DATA_DIR ?? path.join(ROOT, 'data')),
		},
	}),
);
