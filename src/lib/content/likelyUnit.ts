import { ASKED_UNITS, type AskedUnit } from './newSpecimen';
import type { ScanLook } from './scanUpload';

/** Millimetres in one unit; the inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
export const MM_PER_ASKED: Readonly<Record<AskedUnit, number>> = { mm: 1, cm: 10, in: 25.4, m: 1000 };

/** Longest sides of teeth, root included, mm: common practice, no source. */
const TOOTH_mm = { least: 2, most: 400 };
/** A crown whose card says another height by more than this share is not in that unit. */
const AGREES = 0.2;

/** The scan's crown, or else its longest side, mm, if its numbers were in this unit. */
export const heightIn = (unit: AskedUnit, { crown, box }: Pick<ScanLook, 'crown' | 'box'>): number =>
	(crown?.height ?? box[0]) * MM_PER_ASKED[unit];

/**
 * The unit that a scan's numbers are probably in: the one that agrees with the crown height of its card, where that is
 * given and the crown was found; else metres for a GLB, as its standard says, and mm for the others, unless no tooth is
 * that large or small. null where nothing fits. A guess, to be confirmed by whoever knows the scan.
 */
export function likelyUnit(look: ScanLook, cardHeight_mm: number | null): AskedUnit | null {
	if (cardHeight_mm !== null && look.crown) {
		const off = (unit: AskedUnit): number => Math.abs(Math.log(heightIn(unit, look) / cardHeight_mm));
		const [best] = [...ASKED_UNITS].sort((a, b) => off(a) - off(b));
		return off(best) < Math.log(1 + AGREES) ? best : null;
	}
	const order: AskedUnit[] = look.format === 'glb' ? ['m', 'mm', 'cm', 'in'] : ['mm', 'cm', 'in', 'm'];
	return (
		order.find((unit) => {
			const longest_mm = look.box[0] * MM_PER_ASKED[unit];
			return longest_mm >= TOOTH_mm.least && longest_mm <= TOOTH_mm.most;
		}) ?? null
	);
}

/** The unit that was meant where a crown misses its card's height by a unit's factor (25.4, 10, 1000 ...); else null. */
export function meantUnit(chosen: AskedUnit, look: ScanLook, cardHeight_mm: number | null): AskedUnit | null {
	if (cardHeight_mm === null || !look.crown) return null;
	const likely = likelyUnit(look, cardHeight_mm);
	return likely === chosen ? null : likely;
}
