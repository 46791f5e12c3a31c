import { chromium, type Browser } from '@playwright/test';

/** A browser that draws in software, so that machines with and without a graphics card give the same. */
export const launch = (): Promise<Browser> =>
	chromium.launch({
		executablePath: process.env.CHROMIUM_PATH,
		args: [
			'--no-sandbox',
			'--disable-quic',
			'--no-first-run',
			'--disable-background-networking',
			'--disable-component-update',
			'--disable-sync',
			'--use-angle=swiftshader',
			'--enable-unsafe-swiftshader',
		],
	});
