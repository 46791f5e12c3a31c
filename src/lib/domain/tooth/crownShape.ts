import { centreline, type Centreline } from './centreline';
import { SIDE_ANGLE_DEG, type SectionStop, type Side, type ToothForm } from './form';
import { sectionOutline, type Point2 } from './sectionOutline';
import { clamp, lerp, smoothstep } from './smooth';
import { fullnessOf, taperSlope, taperWidth, tipProfile, type TipProfile } from './tipProfile';

/**
 * The crown without edges and ridges, as functions over columns (fixed section angles) and depth `u`
 * (mm below the tip along the centreline).
 */
export interface CrownShape {
	line: Centreline;
	/** length of the centreline, mm */
	length_mm: number;
	/** section angles of the columns, radians in the box of the base section */
	columns: readonly number[];
	/** depth of the blunt tip: the greatest at which some meridian still lies on the tip's sphere, mm */
	tipEnds_mm: number;
	/** section point of a column, mm from the centreline, in the section's plane */
	sectionPoint(column: number, u_mm: number): Point2;
}

/** Enamel swells by this much of the base's half width just above a neck or root. */
const SWELL = 0.05;
/** A neck makes it swell by this much more of its constriction. */
const NECK_SWELL = 0.7;
/** A dome's tip over its length. */
const DOME_TIP = 0.06;
/** The swelling ends at this fraction of the height. */
const SWELL_ENDS = 0.42;

/** Turns a side or an angle in degrees (in real space) into the section angle in the box of the base section. */
export function boxAngle(
	where: Side | number,
	form: Pick<ToothForm, 'baseLength_mm' | 'baseWidth_mm'>,
): number {
	const real = ((typeof where === 'number' ? where : SIDE_ANGLE_DEG[where]) * Math.PI) / 180;
	const a = Math.atan2(Math.sin(real) / form.baseWidth_mm, Math.cos(real) / form.baseLength_mm);
	return a < -1e-12 ? a + 2 * Math.PI : Math.max(0, a);
}

/** Whether some section of a form is triangular: its columns then follow the three edges. */
export const isThreeEdged = (form: ToothForm): boolean =>
	form.sections.some((stop) => stop.shape === 'triangular');

/** Which two stops make the section at one height, and how they mix. */
interface Mix {
	lower: number;
	upper: number;
	/** 0 = all of the lower stop .. 1 = all of the upper */
	share: number;
	halfLength_mm: number;
	halfWidth_mm: number;
}

/** Stops of a form from base to tip, and the mix at any fraction of the height. */
function sectionMix(form: ToothForm): { stops: SectionStop[]; threeEdged: boolean; mixAt(t: number): Mix } {
	const stops = [...form.sections].sort((a, b) => a.at - b.at);
	const factors = stops.map((stop) => stop.widthFactor ?? 1);
	const mixAt = (t: number): Mix => {
		let upper = stops.findIndex((stop) => stop.at > t);
		if (upper < 0) upper = stops.length - 1;
		const lower = Math.max(0, stops[upper].at > t ? upper - 1 : upper);
		const share = lower === upper ? 0 : smoothstep(stops[lower].at, stops[upper].at, t);
		// width factors are relative to the base, whatever the lowest stop says
		const factor = lerp(factors[lower], factors[upper], share) / factors[0];
		return {
			lower,
			upper,
			share,
			halfLength_mm: form.baseLength_mm / 2,
			halfWidth_mm: (form.baseWidth_mm / 2) * factor,
		};
	};
	return { stops, threeEdged: isThreeEdged(form), mixAt };
}

const mixed = (mix: Mix, p: Point2, q: Point2): Point2 => [
	lerp(p[0], q[0], mix.share) * mix.halfLength_mm,
	lerp(p[1], q[1], mix.share) * mix.halfWidth_mm,
];

/** Outline of the carina-free section at fraction `t` of the height, as if the crown did not taper; mm. */
export function blendedSection(form: ToothForm, t: number): (angle_rad: number) => Point2 {
	const { stops, threeEdged, mixAt } = sectionMix(form);
	const mix = mixAt(t);
	return (angle) =>
		mixed(
			mix,
			stopOutline(stops[mix.lower], angle, threeEdged),
			stopOutline(stops[mix.upper], angle, threeEdged),
		);
}

/** Outline of one stop: its own shape, or part of the way to the other that it names. */
function stopOutline({ shape, towards }: SectionStop, angle_rad: number, threeEdged: boolean): Point2 {
	const own = sectionOutline(shape, angle_rad, threeEdged);
	if (!towards || towards.share === 0) return own;
	const other = sectionOutline(towards.shape, angle_rad, threeEdged);
	return [lerp(own[0], other[0], towards.share), lerp(own[1], other[1], towards.share)];
}

/** How far edges and ridges stand out of a shape at a column and depth, mm. */
export type StandingOut = (column: number, u_mm: number) => number;

/**
 * Builds the crown's shape for given columns so that its highest point, edges and ridges included (`standingOut` tells
 * of them for a trial shape), is `crownHeight_mm` above the base plane.
 */
export function crownShape(
	form: ToothForm,
	columns: readonly number[],
	standingOut: (shape: CrownShape) => StandingOut,
): CrownShape {
	// a straight crown is as long as it is high; a bent one is longer: a few corrections find its length
	let length_mm = form.crownHeight_mm;
	let shape = shapeOfLength(form, columns, length_mm);
	for (let i = 0; i < 12; i++) {
		const ratio = form.crownHeight_mm / highestPoint(shape, standingOut(shape));
		if (Math.abs(ratio - 1) < 1e-7) break;
		length_mm *= ratio;
		shape = shapeOfLength(form, columns, length_mm);
	}
	return shape;
}

function shapeOfLength(form: ToothForm, columns: readonly number[], length_mm: number): CrownShape {
	const { tipRadius_mm } = form;
	const fullness = fullnessOf(form);
	const tipSection = columns.map(blendedSection(form, 1));
	const profiles: TipProfile[] = tipSection.map((p) =>
		tipProfile(fullness, Math.hypot(p[0], p[1]), length_mm, tipRadius_mm),
	);
	// a dome is blunt without any arc
	const leastTip_mm = DOME_TIP * length_mm * Math.max(0, fullness - 1);
	const tipEnds_mm = Math.max(leastTip_mm, ...profiles.map((p) => p.arcEnds_mm));
	// the section no longer changes where the tip's sphere begins
	const settled = 1 - tipEnds_mm / length_mm;
	const swells = form.root.state !== 'none';
	// above a neck the crown tucks in
	const rise =
		Math.min(0.6, 0.55 * taperSlope(fullness, 0.999)) + SWELL + NECK_SWELL * (form.neck?.constriction ?? 0);

	const { stops, threeEdged, mixAt } = sectionMix(form);
	const outlines = stops.map((stop) => columns.map((angle) => stopOutline(stop, angle, threeEdged)));
	let mixedAt = NaN;
	let mix = mixAt(1);
	const section = (column: number, t: number): Point2 => {
		if (t >= settled) return tipSection[column];
		if (t !== mixedAt) {
			mixedAt = t;
			mix = mixAt(t);
		}
		const p = mixed(mix, outlines[mix.lower][column], outlines[mix.upper][column]);
		const share = smoothstep(Math.max(0, settled - 0.15), settled, t);
		if (share === 0) return p;
		const q = tipSection[column];
		return [lerp(p[0], q[0], share), lerp(p[1], q[1], share)];
	};

	return {
		line: centreline(form.curve, length_mm),
		length_mm,
		columns,
		tipEnds_mm,
		sectionPoint(column, u) {
			const t = clamp(1 - u / length_mm, 0, 1);
			const p = section(column, t);
			const { arcEnds_mm, raise_mm } = profiles[column];
			if (u < arcEnds_mm) {
				const radius = Math.sqrt(Math.max(0, u * (2 * tipRadius_mm - u)));
				const norm = Math.hypot(p[0], p[1]);
				return [(p[0] / norm) * radius, (p[1] / norm) * radius];
			}
			const x = (u + raise_mm) / (length_mm + raise_mm);
			let width = taperWidth(fullness, x);
			if (swells && t < SWELL_ENDS) width += rise * t * (1 - t / SWELL_ENDS) ** 2;
			return [p[0] * width, p[1] * width];
		},
	};
}

/** Height of the highest point of a shape above the base plane, mm, found on a grid that is fine near the tip. */
function highestPoint(shape: CrownShape, standingOut: StandingOut): number {
	let highest = shape.line.at(shape.length_mm).centre[1];
	const few = Math.max(1, Math.floor(shape.columns.length / 48));
	for (let i = 1; i <= 48; i++) {
		const u = shape.length_mm * 0.9 * (i / 48) ** 3;
		const { centre, distal, labial } = shape.line.at(shape.length_mm - u);
		for (let j = 0; j < shape.columns.length; j += few) {
			const [x, z] = shape.sectionPoint(j, u);
			const grown = 1 + standingOut(j, u) / Math.max(1e-9, Math.hypot(x, z));
			highest = Math.max(highest, centre[1] + (x * distal[1] + z * labial[1]) * grown);
		}
	}
	return highest;
}
