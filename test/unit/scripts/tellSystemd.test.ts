import http from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, it } from 'vitest';
import { tellSystemd } from '../../../src/scripts/tellSystemd.mjs';

const open: http.Server[] = [];
afterEach(() => open.splice(0).forEach((server) => server.close()));
async function answering(status: number): Promise<string> {
	const server = http.createServer((_, response) => response.writeHead(status).end());
	open.push(server);
	await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
	return `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
}
const env = { NOTIFY_SOCKET: '/run/systemd/notify', WATCHDOG_USEC: '60000000' };

/** What is told after the pulse has beaten once. */
async function pulse(
	address: string,
	given: NodeJS.ProcessEnv = env,
): Promise<{ told: string[]; every_ms: number[] }> {
	const told: string[] = [];
	const every_ms: number[] = [];
	const beats: (() => void)[] = [];
	tellSystemd(address, {
		env: given,
		tell: (word) => told.push(word),
		every: (ms, does) => (every_ms.push(ms), beats.push(does)),
	});
	beats.forEach((beat) => beat());
	for (let waited = 0; waited < 500 && beats.length && told.length < 2; waited += 10)
		await new Promise((resolve) => setTimeout(resolve, 10));
	return { told, every_ms };
}

it('tells that the server is ready, then that it lives, at half the time granted', async () => {
	expect(await pulse(await answering(200))).toEqual({ told: ['READY=1', 'WATCHDOG=1'], every_ms: [30_000] });
});
it('a server with nothing to show lives too', async () => {
	expect((await pulse(await answering(503))).told).toEqual(['READY=1', 'WATCHDOG=1']);
});
it('a server that fails or does not answer gives no sign of life', async () => {
	expect((await pulse(await answering(500))).told).toEqual(['READY=1']);
	const gone = await answering(200);
	open.splice(0).forEach((server) => server.close());
	expect((await pulse(gone)).told).toEqual(['READY=1']);
});
it('does nothing where systemd is not waiting', async () => {
	expect(await pulse('http://127.0.0.1:9', {})).toEqual({ told: [], every_ms: [] });
	expect(await pulse('http://127.0.0.1:9', { NOTIFY_SOCKET: '/x' })).toEqual({
		told: ['READY=1'],
		every_ms: [],
	});
});
