// npm run measure -- FILE... [--units mm] [--json]: measures scans and prints what was found.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { ROOT, bin, ensureInstalled, run } from './setup.mjs';

ensureInstalled();

// npm changes to the project's folder; a relative name is meant from where the command was typed
const from = process.env.INIT_CWD ?? process.cwd();
process.exit(
	run(
		process.execPath,
		[bin('tsx', 'dist/cli.mjs'), path.join(ROOT, 'src/lib/server/measureFiles.ts'), ...process.argv.slice(2)],
		{ stdout: 'inherit', env: { MEASURE_FROM: existsSync(from) ? from : ROOT } },
	),
);
