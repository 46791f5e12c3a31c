import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

/** Hash over the code that a prepared shape depends on: what an older version left in the data folder is made again. */
function shapeCode(): string {
	const hash = createHash('sha256');
	for (const folder of ['src/lib/domain', 'src/lib/server/prepare', 'src/lib/server/scan', 'src/lib/content'])
		for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
			const counts =
				folder === 'src/lib/content'
					? name === 'palettes.ts'
					: name.endsWith('.ts') && !/^(feeding|replacement|identify|quiz|time)\b/.test(name);
			if (counts) hash.update(name).update(readFileSync(`${folder}/${name}`));
		}
	return hash.digest('hex').slice(0, 16);
}

export default defineConfig({
	plugins: [sveltekit()],
	define: { __SHAPE_CODE__: JSON.stringify(shapeCode()) },
	server: { port: 4173, fs: { allow: ['.'] } },
	build: {
		target: 'es2022',
		chunkSizeWarningLimit: 900,
		rolldownOptions: { checks: { pluginTimings: false } },
	},
	test: {
		include: ['test/unit/**/*.test.ts', 'test/reference/**/*.test.ts'],
		environment: 'node',
		testTimeout: 30_000,
		// files, processes and databases on a busy machine: one more try, which the report names
		retry: 1,
		setupFiles: ['test/setup.ts'],
	},
});
