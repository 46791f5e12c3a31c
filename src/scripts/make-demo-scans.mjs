// node src/scripts/make-demo-scans.mjs: makes the scan files of the demo exhibit again and marks their crowns.
import path from 'node:path';
import { ROOT, bin, ensureInstalled, run } from './setup.mjs';

ensureInstalled();

process.exit(
	run(
		process.execPath,
		[bin('tsx', 'dist/cli.mjs'), path.join(ROOT, 'src/lib/server/demoScans.ts'), path.join(ROOT, 'content')],
		{ stdout: 'inherit' },
	),
);
