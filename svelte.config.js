import adapter from '@sveltejs/adapter-node';
import { sourcesHash } from './src/scripts/sources-hash.mjs';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
	preprocess: vitePreprocess(),
	compilerOptions: { runes: true },
	kit: {
		// open screens learn by it that the program was replaced; the same sources give the same name
		version: { name: sourcesHash().slice(0, 16) },
		// only an export has one in use, and registers it itself
		serviceWorker: { register: false },
		adapter: adapter({ out: 'build', precompress: true }),
		// Everything is served from this machine; nothing may be fetched from outside.
		csp: {
			mode: 'hash',
			directives: {
				'default-src': ['none'],
				'script-src': ['self', 'wasm-unsafe-eval'],
				'style-src': ['self'],
				// one attribute alone: SvelteKit's announcer of page titles; our own are lifted by hooks.server.ts
				'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
				'img-src': ['self', 'data:', 'blob:'],
				'font-src': ['self'],
				'connect-src': ['self', 'blob:'],
				'worker-src': ['self', 'blob:'],
				'media-src': ['self'],
				// the desk's preview of a room; what may be framed says so itself (server/securePage.ts)
				'frame-src': ['self'],
				'manifest-src': ['self'],
				'base-uri': ['none'],
				'form-action': ['none'],
				'frame-ancestors': ['none'],
			},
		},
	},
};
