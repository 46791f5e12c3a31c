// npm run bench: prints the performance table of the README. `npm run bench -- drag` runs only the parts named.
import { bin, ensureBrowser, ensureBuilt, ensureInstalled, run } from './setup.mjs';

ensureInstalled();
const browser = ensureBrowser();
ensureBuilt();
process.exit(
	run(process.execPath, [bin('tsx', 'dist/cli.mjs'), 'test/bench/run.ts', ...process.argv.slice(2)], {
		stdout: 'inherit',
		env: { CHROMIUM_PATH: browser },
	}),
);
