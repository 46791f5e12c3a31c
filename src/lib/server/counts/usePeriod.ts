import { firstKeptDay } from './days';

/** Periods that may be asked for, in days, today among them; 0 = as long as counts are kept. */
export const USE_PERIODS = [7, 28, 91, 0] as const;
const USUAL = 28;

/** The period of an address and its first day; an unknown one becomes the usual. */
export function usePeriod(asked: string | null, today: Date): { days: number; from: string | undefined } {
	const days = USE_PERIODS.find((one) => String(one) === asked) ?? USUAL;
	return { days, from: days === 0 ? undefined : firstKeptDay(today, days) };
}
