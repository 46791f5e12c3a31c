import { describe, expect, it } from 'vitest';
import { beatSchema, hungSchema } from '../../../../src/lib/server/screens/beatSchema';
import { takeWord } from '../../../../src/lib/server/screens/takeWord';
import { beat } from './beat';

const ask = (body: string, origin = 'http://table.local') =>
	new Request('http://table.local/live/beat', {
		method: 'POST',
		headers: { origin, host: 'table.local', 'content-type': 'application/json' },
		body,
	});

describe('takeWord', () => {
	it('hands on what a screen may say', async () => {
		const heard: unknown[] = [];
		const take = (word: unknown) => void heard.push(word);
		expect((await takeWord(ask(JSON.stringify(beat())), beatSchema, take)).status).toBe(204);
		const nameless = beat({ name: null, frames: null, heap_MB: null, touched_min: null, exhibit: null });
		expect((await takeWord(ask(JSON.stringify(nameless)), beatSchema, take)).status).toBe(204);
		const hung = { name: 'wall', page: 'a'.repeat(16) };
		expect((await takeWord(ask(JSON.stringify(hung)), hungSchema, take)).status).toBe(204);
		expect(heard).toEqual([beat(), nameless, hung]);
	});

	it('refuses everything else', async () => {
		const refused = async (body: string, origin?: string) =>
			(await takeWord(ask(body, origin), beatSchema, () => expect.fail('was handed on'))).status;
		expect(await refused('{')).toBe(400);
		expect(await refused(JSON.stringify({ ...beat(), visitor: 'Ann' }))).toBe(400);
		expect(await refused(JSON.stringify({ ...beat(), name: '../etc' }))).toBe(400);
		expect(await refused(JSON.stringify({ ...beat(), touched_min: 3 }))).toBe(400);
		expect(await refused(JSON.stringify({ ...beat(), errors: { count: 1, last: 'x'.repeat(201) } }))).toBe(
			400,
		);
		expect(await refused(`"${'x'.repeat(9000)}"`)).toBe(413);
		expect(await refused(JSON.stringify(beat()), 'http://elsewhere.example')).toBe(403);
	});
});
