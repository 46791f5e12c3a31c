import type { ToothForm } from './form';
import { sectionOutline, type Point2 } from './sectionOutline';
import { angleBetween, clamp, lerp, monotoneCurve, rounded, smoothstep } from './smooth';
import { boxAngle } from './crownShape';

/** The outer wall below the crown's base, over the crown's columns. Depth `v`: 0 = base of the crown, 1 = end. */
export interface RootWall {
	length_mm: number;
	/** height of the wall's end at a column (negative), mm */
	endHeight_mm(column: number): number;
	/** section point of the wall at height `y` (0 or below), mm */
	point(column: number, y_mm: number): Point2;
	/** the same without infolding, for the pulp cavity */
	smoothPoint(column: number, y_mm: number): Point2;
	/** how strongly the successor's pit has eaten here, 0 .. 1 */
	pitted(column: number, y_mm: number): number;
}

/** The enamel stands this much proud of the root, as a fraction of the half width. */
const CERVIX_STEP = 0.022;
/** Folds round an infolded base. */
export const FOLDS = 16;
const FOLD_DEPTH = 0.13;
/** Half the angle of the pit, radians in the box of the base section. */
const PIT_HALF_ANGLE = 0.95;
/** Centre and half height of the pit over the stub's length. */
const PIT_CENTRE = 0.64;
const PIT_HALF_HEIGHT = 0.6;
/** Depth at which a root without a cavity begins to round off. */
const CLOSES_AT = 0.8;
/** The stub's edge rises by up to this fraction of its length. */
const SCALLOP = 0.2;

/** `base` holds the base section's point of each column, mm. null for a crown without a root. */
export function rootWall(form: ToothForm, base: readonly Point2[]): RootWall | null {
	const { root } = form;
	if (root.state === 'none') return null;
	const length_mm = root.length_mm;
	const b = form.baseWidth_mm / 2;
	const a = form.baseLength_mm / 2;
	// deeper down the section turns to an oval that is rounder than the crown's base
	const roundA = b * (a / b) ** 0.6;
	/** where each column really lies round the section, in the box */
	const around = base.map(([x, z]) => Math.atan2(z / b, x / a));
	const oval = around.map((angle): Point2 => {
		const p = sectionOutline('oval', angle);
		return [p[0] * roundA, p[1] * b];
	});
	const width = widthCurve(form);
	const folded = root.state === 'full' && root.folded;
	const foldShare = around.map((angle) => (0.5 + 0.5 * Math.cos(FOLDS * angle)) ** 3);
	const pitAngle = root.state === 'resorbed' ? boxAngle(root.pitSide, form) : 0;
	const pitDepth_mm = root.state === 'resorbed' ? root.pitDepth_mm : 0;

	// a root without a cavity ends rounded
	const closed = root.state === 'full' && !form.pulp;
	const closing = (v: number): number =>
		closed && v > CLOSES_AT ? Math.sqrt(Math.max(0, 1 - ((v - CLOSES_AT) / (1 - CLOSES_AT)) ** 2)) : 1;

	const pitShare = (column: number, y: number): number => {
		if (root.state !== 'resorbed') return 0;
		const across = angleBetween(around[column], pitAngle) / PIT_HALF_ANGLE;
		const up = (y / length_mm + PIT_CENTRE) / PIT_HALF_HEIGHT;
		return Math.max(0, 1 - across * across - up * up);
	};
	const smoothPoint = (column: number, y: number): Point2 => {
		const v = clamp(-y / length_mm, 0, 1);
		const share = smoothstep(0, 0.55, v);
		const f = width(v) * closing(v);
		const x = lerp(base[column][0], oval[column][0], share) * f;
		const z = lerp(base[column][1], oval[column][1], share) * f;
		const eaten = pitShare(column, y);
		if (eaten === 0) return [x, z];
		const radius = Math.hypot(x, z);
		const left = Math.max(0.12, 1 - (pitDepth_mm * eaten ** 1.4) / radius);
		return [x * left, z * left];
	};

	return {
		length_mm,
		endHeight_mm(column) {
			if (root.state !== 'resorbed') return -length_mm;
			const angle = around[column];
			const waves =
				Math.sin(3 * angle + 0.7) + 0.7 * Math.sin(5 * angle + 2.1) + 0.5 * Math.sin(9 * angle + 4);
			return -length_mm * (1 - SCALLOP * clamp(0.5 + waves / 4.4, 0, 1));
		},
		smoothPoint,
		point(column, y) {
			const [x, z] = smoothPoint(column, y);
			if (!folded) return [x, z];
			const k = 1 - FOLD_DEPTH * foldShare[column] * smoothstep(0.25, 0.8, -y / length_mm);
			return [x * k, z * k];
		},
		pitted: pitShare,
	};
}

/** Width of the root over the crown's base width, against depth 0 .. 1. */
function widthCurve(form: ToothForm): (v: number) => number {
	const { root, neck } = form;
	if (root.state === 'none') return () => 1;
	const start = 1 - CERVIX_STEP;
	const knots: [number, number][] = [[0, start]];
	if (neck && neck.constriction > 0) {
		const waist = clamp((0.5 * neck.length_mm) / root.length_mm, 0.08, 0.42);
		knots.push([waist * 0.85, Math.min(start, 1 - neck.constriction)]);
		knots.push([waist * 1.15, Math.min(start, 1 - neck.constriction)]);
	}
	const low = knots[knots.length - 1][0];
	if (root.state === 'full') {
		// widest over a short stretch, so that rounding keeps the width asked for
		const widest = Math.max(0.4, low + 0.24);
		const end = root.swelling * (root.folded ? 0.86 : form.pulp ? 0.55 : 0.62);
		knots.push([widest - 0.05, root.swelling], [widest + 0.05, root.swelling], [1, end]);
	} else if (root.state === 'open') {
		knots.push([1, start + 0.05]);
	} else {
		knots.push([Math.max(0.6, low + 0.2), 1], [1, 0.9]);
	}
	const curve = monotoneCurve(
		knots.map((k) => k[0]),
		knots.map((k) => k[1]),
	);
	return rounded(curve, 0.07);
}
