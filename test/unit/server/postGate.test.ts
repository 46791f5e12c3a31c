import { describe, expect, it } from 'vitest';
import { postGate } from '../../../src/lib/server/postGate';

const asked = (method: string, bytes?: number) => ({
	method,
	headers: new Headers(bytes === undefined ? {} : { 'content-length': String(bytes) }),
});

describe('postGate', () => {
	it('lets so many changes pass in a window, and any number of readers', () => {
		let now = 0;
		const gate = postGate({ most: 3, window_ms: 1000, mostBytes: 100 }, () => now);
		for (let i = 0; i < 3; i += 1) expect(gate(asked('POST', 10))).toBeNull();
		expect(gate(asked('POST', 10))?.status).toBe(429);
		expect(gate(asked('DELETE'))?.status).toBe(429);
		for (let i = 0; i < 50; i += 1) expect(gate(asked('GET'))).toBeNull();
		now = 1001;
		expect(gate(asked('PUT', 100))).toBeNull();
	});

	it('does not lock out when the clock is set back', () => {
		let now = 1_000_000;
		const gate = postGate({ most: 1, window_ms: 1000, mostBytes: 100 }, () => now);
		expect(gate(asked('POST'))).toBeNull();
		now = 0;
		expect(gate(asked('POST'))).toBeNull();
	});

	it('refuses what is too large, without counting it', () => {
		const gate = postGate({ most: 1, window_ms: 1000, mostBytes: 100 }, () => 0);
		expect(gate(asked('POST', 101))?.status).toBe(413);
		expect(gate(asked('POST', 100))).toBeNull();
	});

	it('lets more come to one path only, and nothing that does not say its size', () => {
		const gate = postGate(
			{ most: 9, window_ms: 1000, mostBytes: 100, larger: { '/desk/new/scan': 5000 } },
			() => 0,
		);
		expect(gate(asked('POST', 5000), '/desk/new/scan')).toBeNull();
		expect(gate(asked('POST', 5001), '/desk/new/scan')?.status).toBe(413);
		for (const path of ['/desk/save', '/desk/new/scan/', '/quiz/counts', 'constructor'])
			expect(gate(asked('POST', 101), path)?.status, path).toBe(413);
		const chunked = { method: 'POST', headers: new Headers({ 'transfer-encoding': 'chunked' }) };
		expect(gate(chunked, '/desk/new/scan')?.status).toBe(411);
		expect(gate(chunked, '/quiz/counts')?.status).toBe(411);
	});
});
