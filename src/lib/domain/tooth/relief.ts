import { boxAngle, type CrownShape } from './crownShape';
import type { CarinaForm, ToothForm } from './form';
import { angleBetween, smoothstep, unevenness } from './smooth';

/** Half width of a keel's foot over its height. */
export const KEEL_SPREAD = 1.7;
/** Part of the keel's foot that counts as the edge itself. */
const STRIP = 0.55;
/** A keel has its full height where the section's radius is at least this many times that height. */
const KEEL_FULL_AT = 5;
/** Length over which a keel or ridge rises from the surface, as a fraction of crown height. */
const FADE = 0.13;
/** Half width of a ridge's foot over the gap between ridges. */
const RIDGE_SPREAD = 0.42;
/** Angle given to a ridge that stands alone, radians. */
const WIDEST_RIDGE = 0.4;
/** Where every second ridge stops when they alternate. */
const SHORT_RIDGE = 0.6;

export interface RidgeLine {
	angle_rad: number;
	from: number;
	to: number;
}

/** Where the ridges stand (box radians, rising) and between which heights each runs. */
export function ridgeAngles(form: ToothForm): RidgeLine[] {
	const { ridges } = form;
	if (!ridges || ridges.count === 0) return [];
	const [start, span] =
		ridges.sides === 'all' ? [0, 2 * Math.PI] : [ridges.sides === 'labial' ? 0 : Math.PI, Math.PI];
	return Array.from({ length: ridges.count }, (_, i) => {
		const reach = (ridges.to - ridges.from) * (1 - 0.1 * unevenness(i));
		const short = ridges.alternating && i % 2 === 1;
		return {
			angle_rad: start + (span * (i + 0.5)) / ridges.count,
			from: ridges.from,
			to: ridges.from + reach * (short ? SHORT_RIDGE : 1),
		};
	});
}

/** Angle that one ridge has to itself, radians; ridges that stand far apart stay narrow. */
export function ridgeGap(lines: readonly RidgeLine[]): number {
	return lines.length > 1 ? Math.min(WIDEST_RIDGE, lines[1].angle_rad - lines[0].angle_rad) : WIDEST_RIDGE;
}

/** Notches of one cutting edge: phase (in denticles) as a function of depth below the tip. */
export interface Serration {
	/** 0 = no notch .. 1 = bottom of a notch */
	notch(u_mm: number): number;
}

export interface Relief {
	/** how far the surface stands out at a place (mm), and what stands out clearly there, if anything */
	at(column: number, u_mm: number): { height_mm: number; feature: 'carina' | 'ridge' | null };
}

interface Crest {
	height: number;
	risen: number;
}

/** Height of a keel's crest at depth u, notches left out (mm), and how far it has risen at its ends, 0 .. 1. */
function crestHeight(carina: CarinaForm, shape: CrownShape, radius_mm: number, u_mm: number): Crest {
	const t = 1 - u_mm / shape.length_mm;
	const room = Math.min(1, radius_mm / (KEEL_FULL_AT * carina.prominence_mm));
	const low = smoothstep(carina.from, Math.min(1, carina.from + FADE), t);
	const tip = smoothstep(shape.tipEnds_mm * 0.3, shape.tipEnds_mm * 2.5 + 0.05 * shape.length_mm, u_mm);
	return { height: carina.prominence_mm * room * (2 - room) * low * tip, risen: low * tip };
}

/** Keels and ridges of a crown over its columns. `serrations` has one entry per carina, null or missing where smooth. */
export function relief(
	form: ToothForm,
	shape: CrownShape,
	serrations: readonly (Serration | null)[],
): Relief {
	const keels = form.carinae.map((carina, i) => {
		const angle = boxAngle(carina.where, form);
		const column = nearestColumn(shape.columns, angle);
		const depth_mm = carina.serrationDepth_mm ?? carina.prominence_mm / 3;
		// neighbours within a quarter turn can be reached by the keel
		const near = shape.columns.map((a) => Math.abs(angleBetween(a, angle)) < Math.PI / 2.2);
		return {
			carina,
			column,
			depth_mm,
			near,
			strip: stripOf(carina, column),
			serration: serrations[i] ?? null,
		};
	});
	/** columns that count as the edge itself: fixed all the way up, so that its border is one clean line */
	function stripOf(carina: CarinaForm, column: number): boolean[] {
		const u = shape.length_mm * (1 - (0.55 + 0.45 * carina.from));
		const c = shape.sectionPoint(column, u);
		const crest = crestHeight(carina, shape, Math.hypot(c[0], c[1]), u).height;
		const n = shape.columns.length;
		return shape.columns.map((_, j) => {
			const steps = Math.min((j - column + n) % n, (column - j + n) % n);
			const p = shape.sectionPoint(j, u);
			return steps <= 1 || Math.hypot(p[0] - c[0], p[1] - c[1]) < STRIP * KEEL_SPREAD * crest;
		});
	}
	const lines = ridgeAngles(form);
	const gap = ridgeGap(lines);
	const closest = new Set(
		lines.flatMap((line) => {
			const [j, n] = [nearestColumn(shape.columns, line.angle_rad), shape.columns.length];
			return [j, (j + 1) % n, (j - 1 + n) % n];
		}),
	);
	// the ridge over each column, and how high that column stands on it
	const onRidge = shape.columns.map((angle) => {
		for (const line of lines) {
			const d = Math.abs(angleBetween(angle, line.angle_rad)) / gap;
			if (d < RIDGE_SPREAD) return { line, share: Math.cos((Math.PI / 2) * (d / RIDGE_SPREAD)) ** 2 };
		}
		return null;
	});

	const crests = (u: number): Crest[] =>
		keels.map((k) => {
			const p = shape.sectionPoint(k.column, u);
			return crestHeight(k.carina, shape, Math.hypot(p[0], p[1]), u);
		});
	let crestsAt = NaN;
	let crestsNow: Crest[] = [];

	/** nearness to the crest 0 .. 1 and height of the nearest keel here, and whether it is the edge itself */
	const keelHere = (column: number, u: number): { share: number; height: number; edge: boolean } => {
		let best = { share: 0, height: 0, edge: false };
		if (keels.length === 0) return best;
		if (u !== crestsAt) {
			crestsNow = crests(u);
			crestsAt = u;
		}
		const p = shape.sectionPoint(column, u);
		keels.forEach((keel, i) => {
			const { height: crest, risen } = crestsNow[i];
			if (!keel.near[column] || crest <= 0) return;
			const c = shape.sectionPoint(keel.column, u);
			const x = Math.hypot(p[0] - c[0], p[1] - c[1]) / (KEEL_SPREAD * crest);
			const edge = best.edge || (keel.strip[column] && (x < 0.8 || column === keel.column) && risen > 0.06);
			if (1 - x <= best.share) {
				best = { ...best, edge };
				return;
			}
			let height = crest * (1 - x) ** 2;
			if (keel.serration) {
				const depth = Math.min(keel.depth_mm, 0.8 * crest) * keel.serration.notch(u);
				height = Math.min(height, Math.max(crest - depth, 0));
			}
			best = { share: 1 - x, height, edge };
		});
		return best;
	};

	const ridgeHere = (column: number, u: number): { marked: boolean; height: number } => {
		const ridge = onRidge[column];
		if (!ridge || !form.ridges) return { marked: false, height: 0 };
		const t = 1 - u / shape.length_mm;
		const { from, to } = ridge.line;
		const ends =
			smoothstep(from, from + Math.min(FADE, (to - from) / 2), t) *
			(1 - smoothstep(to - Math.min(2 * FADE, (to - from) / 2), to, t));
		const p = shape.sectionPoint(column, u);
		const room = (Math.hypot(p[0], p[1]) * gap) / 2;
		const height = Math.min(form.ridges.height_mm, 0.6 * room) * ends;
		const marked = ends > 0.3 && (closest.has(column) || ridge.share > 0.6);
		return { marked, height: height * ridge.share };
	};

	return {
		at(column, u) {
			const keel = keelHere(column, u);
			const ridge = ridgeHere(column, u);
			return {
				height_mm: keel.height + ridge.height * (1 - smoothstep(0, 0.6, keel.share)),
				feature: keel.edge ? 'carina' : ridge.marked ? 'ridge' : null,
			};
		},
	};
}

export function nearestColumn(columns: readonly number[], angle_rad: number): number {
	let best = 0;
	columns.forEach((a, j) => {
		if (Math.abs(angleBetween(a, angle_rad)) < Math.abs(angleBetween(columns[best], angle_rad))) best = j;
	});
	return best;
}
