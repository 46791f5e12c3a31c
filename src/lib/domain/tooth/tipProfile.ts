import type { Taper, ToothForm } from './form';

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

/**
 * Fullness of an outline: -1 needle, 0 cone, 1 bullet, 2 dome, and anything between. Up to 1 the width is x - k x (1 - x),
 * x = 0 at the tip and 1 at the base; from 1 to 2 the bullet passes into a half-ellipse.
 */
const FULLNESS: Readonly<Record<Taper, number>> = { needle: -1, cone: 0, bullet: 1, dome: 2 };
/** k of the needle, and of the bullet. */
const [NEEDLE_BEND, BULLET_BEND] = [0.38, -0.72];

/** Fullness of a form's outline. */
export const fullnessOf = ({ taper, fullness }: Pick<ToothForm, 'taper' | 'fullness'>): number =>
	fullness ?? FULLNESS[taper];

const asNumber = (outline: Taper | number): number =>
	typeof outline === 'number' ? outline : FULLNESS[outline];

const bendOf = (fullness: number): number =>
	fullness < 0 ? -fullness * NEEDLE_BEND : Math.min(1, fullness) * BULLET_BEND;

const domeShare = (fullness: number): number => Math.min(1, Math.max(0, fullness - 1));

/** Width over base width at x = 0 (virtual tip) .. 1 (base). */
export function taperWidth(outline: Taper | number, x: number): number {
	const fullness = asNumber(outline);
	const k = bendOf(fullness);
	const share = domeShare(fullness);
	const bent = x * (1 - k) + k * x * x;
	return share === 0 ? bent : (1 - share) * bent + share * Math.sqrt(Math.max(0, x * (2 - x)));
}

/** d(width)/dx of `taperWidth`. */
export function taperSlope(outline: Taper | number, x: number): number {
	const fullness = asNumber(outline);
	const k = bendOf(fullness);
	const share = domeShare(fullness);
	const bent = 1 - k + 2 * k * x;
	if (share === 0) return bent;
	return (1 - share) * bent + (share * (1 - x)) / Math.max(1e-9, Math.sqrt(Math.max(0, x * (2 - x))));
}

/** x at which the width is `width` (0 .. 1). */
function taperInverse(fullness: number, width: number): number {
	const share = domeShare(fullness);
	if (share === 1) return 1 - Math.sqrt(1 - width * width);
	const k = bendOf(fullness);
	// the root written so that it holds for k near 0 too
	const bent = (2 * width) / (1 - k + Math.sqrt((1 - k) ** 2 + 4 * k * width));
	if (share === 0) return bent;
	// Newton in the root of x, in which the curve is smooth at the tip; the widest of both curves bounds it
	let root = Math.sqrt(Math.min(bent, 1));
	for (let i = 0; i < 12; i++) {
		const x = root * root;
		const slope = taperSlope(fullness, x) * 2 * root;
		if (!(slope > 1e-12)) break;
		const next = Math.min(1, Math.max(root * 0.1, root - (taperWidth(fullness, x) - width) / slope));
		const step = Math.abs(next - root);
		root = next;
		if (step < 1e-13) break;
	}
	return root * root;
}

/**
 * Finds where arc and taper touch, for a meridian of base radius `radius_mm` (must exceed `tipRadius_mm`)
 * and length `length_mm`. A dome that is blunter than the tip radius keeps its own tip.
 */
export function tipProfile(
	outline: Taper | number,
	radius_mm: number,
	length_mm: number,
	tipRadius_mm: number,
): TipProfile {
	const taper = asNumber(outline);
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
