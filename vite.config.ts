import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	plugins: [sveltekit()],
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
		setupFiles: ['test/setup.ts'],
	},
});
