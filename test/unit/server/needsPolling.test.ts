import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { needsPolling } from '../../../src/lib/server/needsPolling';

describe('needsPolling', () => {
	it.each([
		['NFS', 0x6969],
		['SMB', 0xff534d42],
		// as a signed number of 32 bits, which some systems hand out
		['SMB 2', 0xfe534d42 | 0],
		['a folder of another machine (9P)', 0x01021997],
		['FUSE', 0x65735546],
	])('looks again and again at %s', (_name, type) => {
		expect(needsPolling('/mnt/share', undefined, () => type)).toBe(true);
	});

	it.each([
		['ext4', 0xef53],
		['a USB stick (FAT)', 0x4d44],
		['tmpfs', 0x01021994],
	])('waits to be told on %s', (_name, type) => {
		expect(needsPolling('/home/content', undefined, () => type)).toBe(false);
	});

	it('does what CONTENT_POLL says', () => {
		expect(needsPolling('/mnt/share', '0', () => 0x6969)).toBe(false);
		expect(needsPolling('/home', '1', () => 0xef53)).toBe(true);
		expect(needsPolling('/home', '', () => 0xef53)).toBe(false);
	});

	it('knows a share of Windows by its name, and takes a missing folder as it comes', () => {
		expect(needsPolling('\\\\museum\\content', undefined, () => 0)).toBe(true);
		expect(needsPolling('/nowhere/at/all', undefined)).toBe(false);
		expect(needsPolling(tmpdir(), undefined)).toBe(false);
	});
});
