/** Code points. Length is what makes a passphrase strong; nothing is asked of its letters (NIST SP 800-63B, 5.1.1.2). */
export const PASSPHRASE_LEAST = 12;
/** More than anybody types; what is longer is no passphrase. */
export const PASSPHRASE_MOST = 256;
export const PIN_DIGITS = 6;

export type PassphraseFault = 'short' | 'long' | 'easy';

/** What keeps this from being a passphrase; null for nothing. */
export function passphraseFault(passphrase: string): PassphraseFault | null {
	const letters = [...passphrase.trim()];
	if (letters.length < PASSPHRASE_LEAST) return 'short';
	if (letters.length > PASSPHRASE_MOST) return 'long';
	// "aaaaaaaaaaaa" and "121212121212" are long and still the first that anybody tries
	return new Set(letters).size < 4 ? 'easy' : null;
}

/** Six digits, and not one digit six times or six in a row up or down. */
export function pinFault(pin: string): 'digits' | 'easy' | null {
	if (!/^\d{6}$/.test(pin)) return 'digits';
	const steps = new Set([...pin].slice(1).map((digit, i) => Number(digit) - Number(pin[i])));
	return steps.size === 1 && [-1, 0, 1].includes([...steps][0]) ? 'easy' : null;
}
