import { boxAngle, type CrownShape } from './crownShape';
import type { CarinaForm, ToothForm } from './form';
import { angleBetween, smoothstep, unevenness } from './smooth';

/** Half width of a keel's foot over its height. */
export const KEEL_SPREAD = 1.7;
/** A keel has its full height where the section's radius is at least this many times that height. */
const KEEL_FULL_AT = 5;
/** Length over which a keel or ridge rises from the surface, as a fraction of crown height. */
const FADE = 0.13;
/** Half width of a ridge's foot over the gap between ridges. */
const RIDGE_SPREAD = 0.42;
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

/** Notches of one cutting edge: phase (in denticles) as a function of depth below the tip. */
export interface Serration {
	/** 0 = no notch .. 1 = bottom of a notch */
	notch(u_mm: number): number;
}

export interface Relief {
	/** how far the surface stands out at a place (mm), and what stands out clearly there, if anything */
	at(column: number, u_mm: number): { height_mm: number; feature: 'carina' | 'ridge' | null };
}

/** Height of a keel's crest at depth u, notches left out, mm. */
export function crestHeight(carina: CarinaForm, shape: CrownShape, radius_mm: number, u_mm: number): number {
	const t = 1 - u_mm / shape.length_mm;
	const room = Math.min(1, radius_mm / (KEEL_FULL_AT * carina.prominence_mm));
	const low = smoothstep(carina.from, Math.min(1, carina.from + FADE), t);
	const tip = smoothstep(shape.tipEnds_mm * 0.3, shape.tipEnds_mm * 2.5 + 0.05 * shape.length_mm, u_mm);
	return carina.prominence_mm * room * (2 - room) * low * tip;
}

/** Keels and ridges of a crown over its columns. `serrations` has one entry per carina, null where smooth. */
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
		return { carina, column, depth_mm, near, serration: serrations[i] };
	});
	const lines = ridgeAngles(form);
	const gap = lines.length > 1 ? lines[1].angle_rad - lines[0].angle_rad : Math.PI;
	// the ridge over each column, and how high that column stands on it
	const onRidge = shape.columns.map((angle) => {
		for (const line of lines) {
			const d = Math.abs(angleBetween(angle, line.angle_rad)) / gap;
			if (d < RIDGE_SPREAD) return { line, share: Math.cos((Math.PI / 2) * (d / RIDGE_SPREAD)) ** 2 };
		}
		return null;
	});

	const crests = (u: number): number[] =>
		keels.map((k) => {
			const p = shape.sectionPoint(k.column, u);
			return crestHeight(k.carina, shape, Math.hypot(p[0], p[1]), u);
		});
	let crestsAt = NaN;
	let crestsNow: number[] = [];

	/** strength 0 .. 1 and height of the strongest keel here */
	const keelHere = (column: number, u: number): { share: number; height: number } => {
		let best = { share: 0, height: 0 };
		if (keels.length === 0) return best;
		if (u !== crestsAt) {
			crestsNow = crests(u);
			crestsAt = u;
		}
		const p = shape.sectionPoint(column, u);
		keels.forEach((keel, i) => {
			if (!keel.near[column] || crestsNow[i] <= 0) return;
			const c = shape.sectionPoint(keel.column, u);
			const x = Math.hypot(p[0] - c[0], p[1] - c[1]) / (KEEL_SPREAD * crestsNow[i]);
			if (x >= 1) return;
			let height = crestsNow[i] * (1 - x) ** 2;
			if (keel.serration) {
				const depth = Math.min(keel.depth_mm, 0.8 * crestsNow[i]) * keel.serration.notch(u);
				height = Math.min(height, Math.max(crestsNow[i] - depth, 0));
			}
			if (1 - x > best.share) best = { share: 1 - x, height };
		});
		return best;
	};

	const ridgeHere = (column: number, u: number): { share: number; height: number } => {
		const ridge = onRidge[column];
		if (!ridge || !form.ridges) return { share: 0, height: 0 };
		const t = 1 - u / shape.length_mm;
		const { from, to } = ridge.line;
		const ends =
			smoothstep(from, from + Math.min(FADE, (to - from) / 2), t) *
			(1 - smoothstep(to - Math.min(2 * FADE, (to - from) / 2), to, t));
		const p = shape.sectionPoint(column, u);
		const room = (Math.hypot(p[0], p[1]) * gap) / 2;
		const height = Math.min(form.ridges.height_mm, 0.6 * room) * ends;
		return { share: ridge.share * ends, height: height * ridge.share };
	};

	return {
		at(column, u) {
			const keel = keelHere(column, u);
			const ridge = ridgeHere(column, u);
			return {
				height_mm: keel.height + ridge.height * (1 - smoothstep(0, 0.6, keel.share)),
				feature: keel.share > 0.45 ? 'carina' : ridge.share > 0.4 ? 'ridge' : null,
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
