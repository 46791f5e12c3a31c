import ts from 'typescript-eslint';
import svelte from 'eslint-plugin-svelte';
import globals from 'globals';
import svelteConfig from './svelte.config.js';

/** Forbids imports that would run against the arrows of DEVELOPERS.md. */
const arrows = (
	/** @type {string[]} */ files,
	/** @type {string[]} */ group,
	/** @type {string} */ message,
) => ({
	files,
	rules: { 'no-restricted-imports': ['error', { patterns: [{ group, message }] }] },
});

export default ts.config(
	{
		ignores: [
			'build/',
			'.svelte-kit/',
			'node_modules/',
			'data/',
			'static/',
			'test-results/',
			'playwright-report/',
		],
	},
	...ts.configs.recommended,
	...svelte.configs.recommended,
	{
		languageOptions: { globals: { ...globals.browser, ...globals.node } },
		rules: {
			'no-undef': 'off',
			'@typescript-eslint/no-unused-vars': [
				'error',
				{ argsIgnorePattern: '^_', varsIgnorePattern: '^_', caughtErrorsIgnorePattern: '^_' },
			],
			'svelte/no-navigation-without-resolve': 'off',
			// plain values made and used within one call are meant to be plain
			'svelte/prefer-svelte-reactivity': 'off',
			// {' '} keeps a space that line breaks would swallow
			'svelte/no-useless-mustaches': 'off',
			eqeqeq: 'error',
			'no-console': 'error',
		},
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } },
	},
	{
		files: ['src/scripts/**', 'test/**', 'src/lib/server/**', 'src/hooks.server.ts'],
		rules: { 'no-console': 'off' },
	},
	arrows(
		['src/lib/domain/**'],
		[
			'svelte',
			'svelte/*',
			'node:*',
			'$app/*',
			'$lib/*',
			'zod',
			'three',
			'**/content/**',
			'**/stage/**',
			'**/ui/**',
			'**/kiosk/**',
			'**/server/**',
			'**/workers/**',
		],
		'domain is pure: it imports only itself and libraries of pure mathematics',
	),
	arrows(
		['src/lib/domain/mesh/**'],
		[
			'svelte',
			'node:*',
			'$app/*',
			'zod',
			'three',
			'**/tooth/**',
			'**/measure/**',
			'**/content/**',
			'**/stage/**',
			'**/server/**',
		],
		'mesh is the lowest room: it knows nothing of teeth',
	),
	arrows(
		['src/lib/domain/tooth/**'],
		[
			'svelte',
			'node:*',
			'$app/*',
			'zod',
			'three',
			'**/measure/**',
			'**/content/**',
			'**/stage/**',
			'**/server/**',
		],
		'tooth may use mesh only',
	),
	arrows(
		['src/lib/content/**'],
		['svelte', 'node:*', '$app/*', 'three', '**/stage/**', '**/ui/**', '**/kiosk/**', '**/server/**'],
		'content knows domain only; reading files is passed in',
	),
	arrows(
		['src/lib/stage/**'],
		['svelte', 'svelte/*', 'node:*', '$app/*', '**/ui/**', '**/kiosk/**', '**/server/**'],
		'the stage is plain TypeScript over domain',
	),
	arrows(
		['src/lib/ui/**', 'src/lib/kiosk/**', 'src/routes/**/*.svelte'],
		['three', 'three/*', 'node:*', '**/server/**'],
		'screens reach three.js through the stage only, and no server code',
	),
);
