// npm run soak: simulated visitors for 12 hours of the screen's own clock. `npm run soak -- --minutes 10` is the short
// form: fewer visitors, the same 12 hours. Exit 1 if memory grows, an error is said, or a second context appears.
import { bin, ensureBrowser, ensureBuilt, ensureInstalled, run } from './setup.mjs';

ensureInstalled();
const browser = ensureBrowser();
ensureBuilt();
process.exit(
	run(process.execPath, [bin('tsx', 'dist/cli.mjs'), 'test/soak/run.ts', ...process.argv.slice(2)], {
		stdout: 'inherit',
		env: { CHROMIUM_PATH: browser },
	}),
);
