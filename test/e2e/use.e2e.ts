import path from 'node:path';
import type { Page, Request } from '@playwright/test';
import Database from 'libsql';
import { DWELL_BUCKETS } from '../../src/lib/domain/use/dwell';
import { USE_ENDS, USE_ROOMS, USE_SETTINGS, USE_STEPS } from '../../src/lib/domain/use/useFacts';
import { CONTENT, expect, ready, test } from './helpers';

const DB = path.resolve(CONTENT, '../data/counts.db');

/** Everything that the page sends about its use. */
function sendings(page: Page): Record<string, unknown>[] {
	const sent: Record<string, unknown>[] = [];
	page.on('request', (request: Request) => {
		if (request.url().endsWith('/use/counts'))
			sent.push(JSON.parse(request.postData() ?? 'null') as Record<string, unknown>);
	});
	return sent;
}
const counting = (page: Page) => page.waitForResponse('**/use/counts');
/** What counts use is fetched when the screen has nothing else to do. */
const watched = (page: Page) =>
	page.waitForFunction(() =>
		performance
			.getEntriesByType('resource')
			.some(({ name }) => /UseCounter|useFacts|use-counter/i.test(name)),
	);

test('a visit: each room is told as it is left, the end as the page goes; nothing about anybody', async ({
	page,
}) => {
	const sent = sendings(page);
	await page.goto('/?lang=en');
	await ready(page);
	await page.waitForTimeout(1500);
	await page
		.getByRole('link', { name: /compare/i })
		.first()
		.tap();
	await ready(page);
	await expect.poll(() => sent.length).toBe(1);
	expect(sent[0]).toMatchObject({ rooms: [{ room: 'start', dwell: 'under-10s' }], teeth: [], left: [] });
	const answered = counting(page);
	await page
		.getByRole('button', { name: 'Français' })
		.or(page.getByRole('link', { name: 'Français' }))
		.first()
		.tap();
	await page.waitForTimeout(500);
	await page.goto('about:blank');
	expect((await answered).status()).toBe(204);
	console.log(JSON.stringify(sent, null, 1));
	const db = new Database(DB, { readonly: true });
	console.log(db.prepare("select * from tally where kind like 'use-%'").all());
	db.close();
	void DWELL_BUCKETS;
	void USE_ENDS;
	void USE_ROOMS;
	void USE_SETTINGS;
	void USE_STEPS;
	void watched;
});
