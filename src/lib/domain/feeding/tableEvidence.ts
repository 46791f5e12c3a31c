import type { Evidence, Reading } from './evidence';
import type { Thresholds } from './thresholds';

/** Words that tables use for a trait, as numbers; teaching translations of ours. */
const TIP = {
	needle: 0.07,
	sharp: 0.09,
	pointed: 0.12,
	'blunt-pointed': 0.2,
	blunt: 0.3,
	dome: 0.55,
} as const;
const EDGES = { none: 0, weak: 0.35, sharp: 0.75, serrated: 1.15 } as const;
const CURVE = { none: 2, slight: 12, moderate: 20, strong: 35 } as const;
/** How much less sure a word is than a measure, times the spread of a measure. */
const WORD = 1.6;

/** One row of a table: what it says of a tooth, as a number, a range (from, to), or a word. */
export interface TableRow {
	/** height over base length (CHR); or the three sides below */
	slenderness?: number | readonly [number, number];
	/** CBL, CBW, CH, AL, mm */
	length_mm?: number;
	width_mm?: number;
	crownHeight_mm?: number;
	apicalLength_mm?: number;
	/** CBW / CBL where the two are not given */
	roundness?: number | readonly [number, number];
	tip?: keyof typeof TIP;
	edges?: keyof typeof EDGES;
	section?: 'oval' | 'blade' | 'triangular';
	curve?: keyof typeof CURVE;
	ridges?: number;
}

/**
 * Evidence from a published row. Ratios are made anew from the lengths and never taken as printed; the height above the base
 * follows from the triangle of apex and base points where all three sides are known, else from CH.
 */
export function tableEvidence(row: TableRow, { spread, unknown }: Thresholds): Evidence {
	const { length_mm, width_mm } = row;
	const missing = (sd: number): Reading => ({
		value: null,
		spread: sd,
		from: 'published',
		note: 'not-recorded',
	});
	const known = (value: number, sd: number): Reading => ({ value, spread: sd, from: 'published' });
	const ratio = (given: TableRow['slenderness'], sd: number): Reading => {
		if (given === undefined) return missing(sd);
		if (typeof given === 'number') return known(given, sd);
		// a range is taken as two standard deviations to each side
		const [low, high] = given;
		return known(Math.sqrt(low * high), Math.hypot(sd, Math.log(high / low) / 4));
	};
	const height_mm = heightOf(row);
	const longer = length_mm && Math.max(length_mm, width_mm ?? 0);
	const slenderness =
		height_mm && longer
			? known(height_mm / longer, spread.slenderness)
			: ratio(row.slenderness, spread.slenderness);
	const roundness =
		length_mm && width_mm
			? known(Math.min(length_mm, width_mm) / Math.max(length_mm, width_mm), spread.roundness)
			: ratio(row.roundness, spread.roundness);
	return {
		slenderness: slenderness.value === null ? missing(unknown.slenderness) : slenderness,
		roundness: roundness.value === null ? missing(unknown.roundness) : roundness,
		tip: row.tip ? known(TIP[row.tip], WORD * spread.tip) : missing(unknown.tip),
		edges: row.edges ? known(EDGES[row.edges], WORD * spread.edges) : missing(unknown.edges),
		section: row.section ? known(row.section === 'oval' ? 0 : 1, spread.section) : missing(unknown.section),
		curve: row.curve ? known(CURVE[row.curve], WORD * spread.curve) : missing(unknown.curve),
		wear: missing(unknown.wear),
		ridges: row.ridges === undefined ? missing(8) : known(row.ridges, 2),
		size: height_mm ? known(height_mm, 0.1) : missing(0.8),
	};
}

/** Height of the apex above the base line, mm: by Heron's formula from the three sides, or CH alone. */
function heightOf({ length_mm: a, crownHeight_mm: b, apicalLength_mm: c }: TableRow): number | undefined {
	if (!a || !b || !c) return b;
	const s = (a + b + c) / 2;
	return (2 * Math.sqrt(Math.max(0, s * (s - a) * (s - b) * (s - c)))) / a;
}
