import { describe, expect, it } from 'vitest';
import { qrModules } from '../../../src/lib/ui/qrModules';
import { takeHomeAddress } from '../../../src/lib/ui/takeHomeAddress';
import { readQr, textOf } from './readQr';

const hex = (bytes: readonly number[]) => bytes.map((byte) => byte.toString(16).padStart(2, '0')).join(' ');

describe('qrModules', () => {
	// the worked example of ISO/IEC 18004, Annex I: "01234567" in a symbol 1-M
	it('makes the symbol of the standard', () => {
		const modules = qrModules('01234567');
		expect(modules).toHaveLength(21);
		const read = readQr(modules);
		expect(hex(read.data)).toBe('10 20 0c 56 61 80 ec 11 ec 11 ec 11 ec 11 ec 11');
		expect(hex(read.correction)).toBe('a5 24 d4 c1 ed 36 c7 87 2c 55');
		expect(read.syndromesAreZero).toBe(true);
		expect(textOf(read.data)).toBe('01234567');
	});

	it('has finders in three corners', () => {
		const modules = qrModules('https://teeth.skerrow.example/compare');
		const n = modules.length;
		// ISO/IEC 18004, 6.3.3: dark 7 x 7, light 5 x 5, dark 3 x 3
		for (const [top, left] of [
			[0, 0],
			[0, n - 7],
			[n - 7, 0],
		])
			for (let i = 0; i < 7; i += 1)
				for (let j = 0; j < 7; j += 1) {
					const ring = Math.max(Math.abs(i - 3), Math.abs(j - 3));
					expect(modules[top + i][left + j]).toBe(ring !== 2);
				}
	});

	it.each([
		['https://a.example', ['skm-0104']],
		['https://teeth.skerrow.example', ['skm-0104', 'skm-0131']],
		['https://teeth.skerrow.example/gallery', ['skm-0104', 'skm-0131', 'skm-0150', 'skm-0161']],
	])('%s with %o is read back by an independent reader', (base, ids) => {
		const address = takeHomeAddress(base, ids, 'fr');
		expect(address).toBe(`${base}/compare?teeth=${ids.join(',')}&lang=fr`);
		const read = readQr(qrModules(address));
		expect(read.syndromesAreZero).toBe(true);
		expect(textOf(read.data)).toBe(address);
	});

	it('one wrong module is noticed by the reader', () => {
		const modules = qrModules('https://teeth.skerrow.example/compare');
		const last = modules.length - 1;
		modules[last][last] = !modules[last][last];
		expect(readQr(modules).syndromesAreZero).toBe(false);
	});
});
