import { describe, expect, it } from 'vitest';
import { checkSecret } from '../../../../src/lib/server/staff/checkSecret';
import { derive, hashSecret, SCRYPT_COST, secretRecord } from '../../../../src/lib/server/staff/hashSecret';
import { passphraseFault, pinFault } from '../../../../src/lib/server/staff/passphraseRules';

const CHEAP = { n: 16, r: 1, p: 1 };

describe('derive', () => {
	it('agrees with the test vectors of RFC 7914, section 12', async () => {
		const hex = async (secret: string, salt: string, n: number, r: number, p: number) =>
			(await derive(secret, Buffer.from(salt), 64, { n, r, p })).toString('hex');
		expect(await hex('', '', 16, 1, 1)).toBe(
			'77d6576238657b203b19ca42c18a0497f16b4844e3074ae8dfdffa3fede21442fcd0069ded0948f8326a753a0fc81f17e8d3e0fb2e0d3628cf35e20c38d18906',
		);
		expect(await hex('pleaseletmein', 'SodiumChloride', 16384, 8, 1)).toBe(
			'7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2d5432955613f0fcf62d49705242a9af9e61e85dc0d651e40dfcf017b45575887',
		);
	});

	it('costs what is advised: 128 MiB', () => {
		expect(128 * SCRYPT_COST.n * SCRYPT_COST.r).toBe(128 * 2 ** 20);
	});
});

describe('hashSecret, checkSecret', () => {
	it('knows the secret again, and no other', async () => {
		const record = await hashSecret('dents de requin 12', CHEAP);
		expect(secretRecord.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
		expect(await checkSecret(record, 'dents de requin 12')).toBe(true);
		for (const wrong of ['', 'dents de requin 1', 'Dents de requin 12', 'dents de requin 12 '])
			expect(await checkSecret(record, wrong), wrong).toBe(false);
	});

	it('keeps neither the secret nor twice the same', async () => {
		const [a, b] = await Promise.all([
			hashSecret('the same words', CHEAP),
			hashSecret('the same words', CHEAP),
		]);
		expect(a.salt).not.toBe(b.salt);
		expect(a.hash).not.toBe(b.hash);
		expect(JSON.stringify([a, b])).not.toContain('same');
	});

	it('does not care which keyboard an accent comes from (NFKC)', async () => {
		const record = await hashSecret('de\u0301fense ivoire', CHEAP);
		expect(await checkSecret(record, 'd\u00e9fense ivoire')).toBe(true);
	});

	it('takes the cost from the record, so that an old one still opens after the cost was raised', async () => {
		for (const cost of [CHEAP, { n: 32, r: 2, p: 2 }])
			expect(await checkSecret(await hashSecret('twelve letters', cost), 'twelve letters')).toBe(true);
	});
});

describe('passphraseFault', () => {
	it('asks for length, in characters as people count them, and nothing else', () => {
		expect(passphraseFault('elevenchars')).toBe('short');
		expect(passphraseFault('twelve chars')).toBeNull();
		expect(passphraseFault('  elevenchars  ')).toBe('short');
		expect(passphraseFault('élàçùñüöœæßð')).toBeNull();
		expect(passphraseFault('🦷🐊🦎🐍🐢🦖')).toBe('short');
		expect(passphraseFault('a b '.repeat(80))).toBe('long');
	});

	it('refuses a few letters over and over', () => {
		for (const easy of ['aaaaaaaaaaaa', '121212121212', 'abcabcabcabc'])
			expect(passphraseFault(easy)).toBe('easy');
	});
});

describe('pinFault', () => {
	it('takes six digits that are not the first ones tried', () => {
		for (const good of ['120934', '001122', '135792']) expect(pinFault(good), good).toBeNull();
		for (const digits of ['', '12345', '1234567', '12345a', '１２０９３４', '120934\n'])
			expect(pinFault(digits), digits).toBe('digits');
		for (const easy of ['000000', '777777', '123456', '654321', '345678'])
			expect(pinFault(easy), easy).toBe('easy');
	});
});
