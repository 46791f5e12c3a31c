import type { Taper } from './form';

/**
 * How wide the crown is along one meridian, from the rounded tip down to the base.
 *
 * Each meridian is a taper curve that ends in an arc of the tip's radius, tangent to it; all meridians share the arc's
 * centre, so the tip is part of a sphere whatever the section. The taper curve would meet the axis at a virtual tip
 * `raise_mm` above the real one. `u` is the distance below the real tip along the centreline, mm.
 */
export interface TipProfile {
	/** where the arc ends and the taper begins, mm below the tip */
	arcEnds_mm: number;
	/** how far the virtual tip stands above the real one, mm */
	raise_mm: number;
}

/** Bend of the taper curves: width = x - k x (1 - x), x = 0 at the tip and 1 at the base. */
const BEND: Readonly<Record<Exclude<Taper, 'dome'>, number>> = { needle: 0.38, cone: 0, bullet: -0.72 };

/** Width over base width at x = 0 (virtual tip) .. 1 (base). */
export function taperWidth(taper: Taper, x: number): number {
	if (taper === 'dome') return Math.sqrt(Math.max(0, x * (2 - x)));
	const k = BEND[taper];
	return x * (1 - k) + k * x * x;
}

/** d(width)/dx of `taperWidth`. */
export function taperSlope(taper: Taper, x: number): number {
	if (taper === 'dome') return (1 - x) / Math.max(1e-9, taperWidth('dome', x));
	const k = BEND[taper];
	return 1 - k + 2 * k * x;
}

/** x at which the width is `width` (0 .. 1). */
function taperInverse(taper: Taper, width: number): number {
	if (taper === 'dome') return 1 - Math.sqrt(1 - width * width);
	const k = BEND[taper];
	if (k === 0) return width;
	return (Math.sqrt((1 - k) ** 2 + 4 * k * width) - (1 - k)) / (2 * k);
}

/**
 * Finds where arc and taper touch, for a meridian of base radius `radius_mm` (must exceed `tipRadius_mm`)
 * and length `length_mm`. A dome that is blunter than the tip radius keeps its own tip.
 */
export function tipProfile(
	taper: Taper,
	radius_mm: number,
	length_mm: number,
	tipRadius_mm: number,
): TipProfile {
	// at the arc's point beta from its top: same width and same slope as the taper
	const mismatch = (beta: number): number => {
		const x = taperInverse(taper, (tipRadius_mm * Math.sin(beta)) / radius_mm);
		const left = length_mm - tipRadius_mm * (1 - Math.cos(beta));
		return radius_mm * taperSlope(taper, x) * (1 - x) - (left * Math.cos(beta)) / Math.sin(beta);
	};
	let low = 1e-5;
	let high = Math.PI / 2;
	if (mismatch(low) >= 0) return { arcEnds_mm: 0, raise_mm: 0 };
	for (let i = 0; i < 45; i++) {
		const middle = (low + high) / 2;
		if (mismatch(middle) < 0) low = middle;
		else high = middle;
	}
	const beta = (low + high) / 2;
	const arcEnds_mm = tipRadius_mm * (1 - Math.cos(beta));
	const x = taperInverse(taper, (tipRadius_mm * Math.sin(beta)) / radius_mm);
	return { arcEnds_mm, raise_mm: (length_mm - arcEnds_mm) / (1 - x) - length_mm };
}
