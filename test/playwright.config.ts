import { defineConfig } from '@playwright/test';
import { findBrowser } from '../src/scripts/setup.mjs';

const PORT = Number(process.env.E2E_PORT ?? 4391);
const args = [
	'--no-sandbox',
	'--disable-quic',
	'--no-first-run',
	'--disable-background-networking',
	'--disable-component-update',
	'--disable-sync',
	// the same renderer on every machine, with a graphics card or without
	'--use-angle=swiftshader',
	'--enable-unsafe-swiftshader',
];
const browser = { launchOptions: { executablePath: findBrowser() ?? undefined, args }, hasTouch: true };

export default defineConfig({
	testDir: 'e2e',
	testMatch: '**/*.e2e.ts',
	outputDir: '../test-results',
	// software rendering takes a whole core: one page at a time
	workers: 1,
	fullyParallel: false,
	// a loaded machine without a graphics card loses a tap now and then: one more try, and the report says "flaky"
	retries: 1,
	timeout: 60_000,
	expect: { timeout: 15_000 },
	reporter: [['list']],
	forbidOnly: true,
	use: { baseURL: `http://localhost:${PORT}`, trace: 'off', ...browser },
	projects: [
		{ name: 'landscape', use: { viewport: { width: 1920, height: 1080 } } },
		{
			name: 'portrait',
			use: { viewport: { width: 1080, height: 1920 } },
			testMatch: ['visitor.e2e.ts', 'access.e2e.ts'],
		},
		{
			name: 'phone',
			use: { viewport: { width: 390, height: 844 } },
			testMatch: ['visitor.e2e.ts', 'access.e2e.ts'],
		},
	],
	webServer: {
		command: `node e2e/serve.mjs ${PORT}`,
		url: `http://localhost:${PORT}/healthz`,
		timeout: 180_000,
		reuseExistingServer: false,
		stdout: 'ignore',
		stderr: 'pipe',
	},
});
