import { AGE_BANDS, ROUND_LENGTHS, type AgeBand, type RoundLength } from './question';

/** What a round is made from, beside the exhibit. */
export interface RoundPlan {
	band: AgeBand;
	length: RoundLength;
	/** 0 .. 9999 */
	seed: number;
}

/**
 * The six digits that bring a round back, said and typed in any language: the first tells band and length, four are the
 * seed, the last checks the others (Luhn: ISO/IEC 7812-1, Annex B), so that one wrong digit, and nearly every swap of two
 * neighbours, is noticed.
 */
export function roundCode({ band, length, seed }: RoundPlan): string {
	if (!Number.isInteger(seed) || seed < 0 || seed > 9999) throw new Error('roundCode: the seed is 0 .. 9999');
	const setUp = AGE_BANDS.indexOf(band) * ROUND_LENGTHS.length + ROUND_LENGTHS.indexOf(length) + 1;
	const digits = `${setUp}${String(seed).padStart(4, '0')}`;
	return digits + luhnDigit(digits);
}

/** The plan behind a code as typed, spaces and hyphens allowed; null when it is none. */
export function readRoundCode(typed: string): RoundPlan | null {
	const digits = typed.replace(/[\s-]/g, '');
	if (!/^[1-9]\d{5}$/.test(digits) || luhnDigit(digits.slice(0, 5)) !== digits[5]) return null;
	const setUp = Number(digits[0]) - 1;
	return {
		band: AGE_BANDS[Math.floor(setUp / ROUND_LENGTHS.length)],
		length: ROUND_LENGTHS[setUp % ROUND_LENGTHS.length],
		seed: Number(digits.slice(1, 5)),
	};
}

/** The check digit that follows a row of digits. */
export function luhnDigit(digits: string): string {
	let sum = 0;
	for (let i = 0; i < digits.length; i += 1) {
		const digit = Number(digits[digits.length - 1 - i]);
		const doubled = i % 2 === 0 ? digit * 2 : digit;
		sum += doubled > 9 ? doubled - 9 : doubled;
	}
	return String((10 - (sum % 10)) % 10);
}
