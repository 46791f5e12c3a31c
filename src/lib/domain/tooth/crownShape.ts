import { centreline, type Centreline } from './centreline';
import { SIDE_ANGLE_DEG, type SectionStop, type Side, type ToothForm } from './form';
import { sectionOutline, type Point2 } from './sectionOutline';
import { clamp, lerp, smoothstep } from './smooth';
import { taperSlope, taperWidth, tipProfile, type TipProfile } from './tipProfile';

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
const NECK_SWELL = 2;
/** A dome's tip over its length. */
const DOME_TIP = 0.06;
/** The swelling ends at this fraction of the height. */
const SWELL_ENDS = 0.3;

/** Turns a side or an angle in degrees (in real space) into the section angle in the box of the base section. */
export function boxAngle(
	where: Side | number,
	form: Pick<ToothForm, 'baseLength_mm' | 'baseWidth_mm'>,
): number {
	const real = ((typeof where === 'number' ? where : SIDE_ANGLE_DEG[where]) * Math.PI) / 180;
	const a = Math.atan2(Math.sin(real) / form.baseWidth_mm, Math.cos(real) / form.baseLength_mm);
	return a < -1e-12 ? a + 2 * Math.PI : Math.max(0, a);
}

/** Outline of the carina-free section at fraction `t` of the height, as if the crown did not taper; mm. */
export function blendedSection(form: ToothForm, t: number): (angle_rad: number) => Point2 {
	const stops = [...form.sections].sort((a, b) => a.at - b.at);
	const over = stops.findIndex((stop) => stop.at > t);
	const upper = over < 0 ? stops[stops.length - 1] : stops[over];
	const lower = over <= 0 ? upper : stops[over - 1];
	const from = over < 0 ? upper : lower;
	const share = from === upper ? 0 : smoothstep(from.at, upper.at, t);
	const a = form.baseLength_mm / 2;
	// factors are relative to the base, whatever the lowest stop says
	const factor = lerp(from.widthFactor ?? 1, upper.widthFactor ?? 1, share) / baseFactor(stops);
	const b = (form.baseWidth_mm / 2) * factor;
	return (angle) => {
		const p = sectionOutline(from.shape, angle);
		if (share === 0) return [p[0] * a, p[1] * b];
		const q = sectionOutline(upper.shape, angle);
		return [lerp(p[0], q[0], share) * a, lerp(p[1], q[1], share) * b];
	};
}

/** The width factor at the base itself, where the first stop above it may already pull. */
function baseFactor(stops: readonly SectionStop[]): number {
	return (
		stops.filter((stop) => stop.at <= 0).at(-1)?.widthFactor ??
		(stops[0].at > 0 ? stops[0].widthFactor : 1) ??
		1
	);
}

/** Builds the crown's shape for given columns so that its highest point is `crownHeight_mm` above the base plane. */
export function crownShape(form: ToothForm, columns: readonly number[]): CrownShape {
	// a straight crown is as long as it is high; a bent one is longer: a few corrections find its length
	let length_mm = form.crownHeight_mm;
	let shape = shapeOfLength(form, columns, length_mm);
	for (let i = 0; i < 12; i++) {
		const ratio = form.crownHeight_mm / highestPoint(shape);
		if (Math.abs(ratio - 1) < 1e-7) break;
		length_mm *= ratio;
		shape = shapeOfLength(form, columns, length_mm);
	}
	return shape;
}

function shapeOfLength(form: ToothForm, columns: readonly number[], length_mm: number): CrownShape {
	const { taper, tipRadius_mm } = form;
	const tipSection = columns.map(blendedSection(form, 1));
	const profiles: TipProfile[] = tipSection.map((p) =>
		tipProfile(taper, Math.hypot(p[0], p[1]), length_mm, tipRadius_mm),
	);
	// a dome is blunt without any arc
	const leastTip_mm = taper === 'dome' ? DOME_TIP * length_mm : 0;
	const tipEnds_mm = Math.max(leastTip_mm, ...profiles.map((p) => p.arcEnds_mm));
	// the section no longer changes where the tip's sphere begins
	const settled = 1 - tipEnds_mm / length_mm;
	const swells = form.root.state !== 'none';
	// above a neck the crown tucks in
	const rise =
		Math.min(0.6, 0.55 * taperSlope(taper, 0.999)) + SWELL + NECK_SWELL * (form.neck?.constriction ?? 0);

	let cachedAt = NaN;
	let cached: Point2[] = [];
	const sectionsAt = (t: number): Point2[] => {
		if (t !== cachedAt) {
			cachedAt = t;
			if (t >= settled) cached = tipSection;
			else {
				const outline = columns.map(blendedSection(form, t));
				const share = smoothstep(Math.max(0, settled - 0.15), settled, t);
				cached =
					share === 0
						? outline
						: outline.map((p, j): Point2 => {
								const q = tipSection[j];
								return [lerp(p[0], q[0], share), lerp(p[1], q[1], share)];
							});
			}
		}
		return cached;
	};

	return {
		line: centreline(form.curve, length_mm),
		length_mm,
		columns,
		tipEnds_mm,
		sectionPoint(column, u) {
			const t = clamp(1 - u / length_mm, 0, 1);
			const p = sectionsAt(t)[column];
			const { arcEnds_mm, raise_mm } = profiles[column];
			if (u < arcEnds_mm) {
				const radius = Math.sqrt(Math.max(0, u * (2 * tipRadius_mm - u)));
				const norm = Math.hypot(p[0], p[1]);
				return [(p[0] / norm) * radius, (p[1] / norm) * radius];
			}
			const x = (u + raise_mm) / (length_mm + raise_mm);
			let width = taperWidth(taper, x);
			if (swells && t < SWELL_ENDS) width += rise * t * (1 - t / SWELL_ENDS) ** 2;
			return [p[0] * width, p[1] * width];
		},
	};
}

/** Height of the highest point of a shape above the base plane, mm, found on a coarse grid near the tip. */
function highestPoint(shape: CrownShape): number {
	let highest = shape.line.at(shape.length_mm).centre[1];
	const few = Math.max(1, Math.floor(shape.columns.length / 48));
	for (let i = 1; i <= 40; i++) {
		const u = shape.length_mm * 0.6 * (i / 40) ** 3;
		const { centre, distal, labial } = shape.line.at(shape.length_mm - u);
		for (let j = 0; j < shape.columns.length; j += few) {
			const [x, z] = shape.sectionPoint(j, u);
			highest = Math.max(highest, centre[1] + x * distal[1] + z * labial[1]);
		}
	}
	return highest;
}
