import { apart, type Crest } from './crests';
import type { CrownLine, MeasureWarning } from './crownMeasures';
import { LINE_LIMITS, type FoundLines } from './crownLines';
import { median } from './median';
import { HIGHEST, LEVELS, LOWEST } from './outlineStack';

/** A line that was followed up the crown. */
export interface LineValues {
	/** from low to high */
	places: {
		level: number;
		/** fraction of axial height */
		at: number;
		crest: Crest;
		prominence_mm: number;
		/** prominence over the section's mean radius */
		share: number;
		/** round the section, as in CrownLine */
		angle_deg: number;
	}[];
	/** typical jump of its crest from level to level, over its prominence */
	rough: number;
}

/** How sharp edges are told from ridges and from rounded corners; ours, found on sculpted crowns and closed forms. */
export const SHARP_LIMITS = {
	/** a corner without hollows that turns by this much within 5 degrees round the section is an edge: a lens turns by 52, a half-round
	 * with a flat face by 24, an ellipse by 5 */
	corner_deg: 38,
	/** and by less than this it is none; between them it cannot be told */
	blunt_deg: 29,
	/** more lines than this that are alike are ridges, however sharp */
	mostEdges: 4,
	/** among up to so many lines: share of the turning that lies within 5 degrees, at least, in an edge (a keel has 1.0 or
	 * more); at most, in a ridge (a rounded one has 0.8) */
	pointed: 0.92,
	rounded: 0.85,
	/** and is no wider than this, degrees, or reaches this height */
	narrow_deg: 6.5,
	tipward: 0.86,
	/** an edge reaches this height at least */
	leastTop: 0.6,
	/** crests that jump from level to level by this share of their prominence have serrations: they are edges */
	rough: 0.06,
	/** few lines that go on for this share of the height where at least so many others have ended are edges */
	goesOn: 0.07,
	fewRidges: 3,
	/** lines whose prominence and pointedness differ by no more than this factor are alike */
	alike: 1.35,
	/** an edge among ridges is this much more pointed or more prominent than they are */
	outlier: 1.5,
	/** and so much more than the two lines next to it */
	overNeighbours: 1.25,
	/** a gap in a row of ridges, over the usual one, that has room for just one more */
	oneMissing: [1.6, 2.5],
	/** distance from an edge to the next ridge, over the usual one, that may hide a ridge on the edge's flank */
	hidden: [1.2, 2.7],
	/** an edge in the place of a ridge is this much prouder than ridges are */
	prouder: 2,
	/** or stands closer between two of them than this share of their distance */
	squeezed: 0.72,
} as const;

interface Judged {
	values: LineValues;
	/** most of its places have hollows on both sides */
	raised: boolean;
	turning: number;
	excess: number;
	width: number;
	/** turning per degree round the section of its raised part */
	point: number;
	/** prominence over mean radius */
	share: number;
	/** height that it keeps to */
	run: number;
	/** highest place where it stands out clearly */
	top: number;
	angle: number;
	direction: number;
	/** the same at mid-crown; null when the line is not there */
	middle: { direction: number; share: number; point: number } | null;
}

/** A ridge prouder than this share of the mean radius always counts. */
const SURE = 0.03;
/** A ridge keeps its height where it has this share of its usual one. */
const STEADY = 0.75;
/** More raised lines than this that are lower than counted ones, but higher than this share, leave the count in doubt. */
const MOST_FAINT = 2;
const FAINT = 0.003;
/** Turning of a corner that still belongs to a line, degrees. */
const LEAST_TURNING_DEG = 20;
/** Turning beyond that of a circle that a raised line must have, degrees: the body between two hollows has about none. */
const LEAST_EXCESS_DEG = 8;
const SPACING = (HIGHEST - LOWEST) / (LEVELS - 1);

interface SortOptions {
	/** noise of the outlines' tangents */
	noise_deg: number;
	/** of the mid-crown outline */
	points: number;
	/** that outline has three corners */
	cornered: boolean;
	/** a worn facet crosses it */
	facetAtMiddle: boolean;
}

/** Tells ridges from edges among followed lines, and counts them. */
export function sortLines(
	lines: readonly LineValues[],
	{ noise_deg, points, cornered, facetAtMiddle }: SortOptions,
): FoundLines {
	const warnings: MeasureWarning[] = [];
	const judged = lines.filter((line) => line.places.length > 0).map(judge);
	// corners of the section, wherever no keel or ridge beside them makes hollows
	const corners = judged.map((line) => cornerRun(line, SHARP_LIMITS.corner_deg) >= LINE_LIMITS.carinaRun);
	const carinae = judged.filter((_, i) => corners[i]);
	const lasting = judged.filter(
		(line, i) =>
			!corners[i] && line.raised && line.run >= LINE_LIMITS.ridgeRun && line.excess >= LEAST_EXCESS_DEG,
	);
	const { edges, ridges, unclear } = tellEdges(
		lasting.filter((line) => line.share >= LINE_LIMITS.prominence),
	);
	carinae.push(...edges.filter((edge) => edge.run >= LINE_LIMITS.carinaRun));
	// what is a corner below and a ridge above, or the other way, is both
	const mixed = judged.some((line, i) => corners[i] && looksLike(line, ridges));
	let edgesUnclear = unclear;
	judged.forEach((line, i) => {
		if (corners[i] || line.raised || line.run < LINE_LIMITS.carinaRun) return;
		if (line.values.rough >= SHARP_LIMITS.rough && line.turning >= SHARP_LIMITS.blunt_deg) carinae.push(line);
		else if (sharpRun(line) >= LINE_LIMITS.carinaRun) edgesUnclear = true;
	});
	const faint = lasting.filter(
		(line) => line.share < LINE_LIMITS.prominence && line.share > FAINT && line.middle,
	);
	const { count, fading } = countAtMiddle(ridges);
	// an edge that stands in a row of ridges as one of them, hardly prouder; or few lines where edges are in doubt
	// with several edges, one or two ridges are no row to tell a hidden one by
	const lone = count > 0 && count < SHARP_LIMITS.fewRidges && carinae.length >= SHARP_LIMITS.fewRidges;
	const swapped = inRow(ridges, carinae) || lone || (edgesUnclear && count > 0);
	const onCorners = cornered && ridges.length >= SHARP_LIMITS.fewRidges;
	edgesUnclear ||= inRow(ridges, carinae) || onCorners;
	const doubts: [boolean, string, string][] = [
		[
			unclear || mixed,
			'ridges-edges-alike',
			'Some raised lines may be ridges or sharp edges: ridges are not counted.',
		],
		[
			onCorners,
			'ridges-on-corners',
			'Ridges and the corners of a three-edged section run into one another: ridges are not counted.',
		],
		[
			facetAtMiddle && ridges.length > 0,
			'facet-at-mid-crown',
			'A worn facet has taken part of the mid-crown section: ridges are not counted.',
		],
		[
			fading || faint.length > MOST_FAINT,
			'ridges-fading',
			'Some ridges are very low at mid-crown: they are not counted.',
		],
		[
			tooClose(ridges, points),
			'ridges-not-resolved',
			'The ridges stand closer than the mesh can tell: they are not counted.',
		],
		[
			hidesRidge(ridges, carinae),
			'ridges-beside-edge',
			'A ridge may run into a sharp edge beside it and be hidden there: ridges are not counted.',
		],
		[
			swapped,
			'ridges-edges-alike',
			'Some raised lines may be ridges or sharp edges: ridges are not counted.',
		],
		[
			isGapped(ridges, carinae),
			'ridges-uneven',
			'A ridge seems to be missing from the row at mid-crown: they are not counted.',
		],
		[
			noise_deg > LINE_LIMITS.noise_deg && ridges.length === 0,
			'ridges-under-noise',
			'The surface is too rough for low ridges to show: they are not counted.',
		],
	];
	const doubt = doubts.find(([holds]) => holds);
	if (doubt) warnings.push({ code: doubt[1], message: doubt[2] });
	if (edgesUnclear)
		warnings.push({
			code: 'edges-unclear',
			message: 'Some corners of the section may or may not be sharp edges: edges are not counted.',
		});
	return {
		ridgeCount: doubt ? null : count,
		ridges: byAngle(ridges),
		carinaCount: edgesUnclear ? null : carinae.length,
		carinae: byAngle(carinae),
		warnings,
	};
}

const byAngle = (lines: readonly Judged[]): CrownLine[] =>
	lines.map(toCrownLine).sort((a, b) => a.angle_deg - b.angle_deg);

/** Whether the row of ridges at mid-crown has a gap for one more between two of them, and no edge stands in it. */
function isGapped(ridges: readonly Judged[], edges: readonly Judged[]): boolean {
	const at = ridges.flatMap((line) => (line.middle ? [line.middle.direction] : [])).sort((a, b) => a - b);
	if (at.length < SHARP_LIMITS.mostEdges) return false;
	const gaps = at.map((direction, i) => (at[(i + 1) % at.length] - direction + 360) % 360);
	const usual = median(gaps);
	const [least, most] = SHARP_LIMITS.oneMissing;
	return gaps.some(
		(gap, i) =>
			gap >= least * usual &&
			gap <= most * usual &&
			!edges.some((edge) => (edge.direction - at[i] + 360) % 360 < gap),
	);
}

/** Distances of an edge to the next ridges before and after it, over the usual distance from ridge to ridge on that side. */
function besideEdge(ridges: readonly Judged[], edge: Judged): [number, number] | null {
	const at = ridges.flatMap((line) => (line.middle ? [line.middle.direction] : [])).sort((a, b) => a - b);
	if (at.length < SHARP_LIMITS.fewRidges) return null;
	const here = edge.middle?.direction ?? edge.direction;
	const onwards = at.map((direction) => (direction - here + 360) % 360).sort((a, b) => a - b);
	const back = onwards.map((gap) => 360 - gap).reverse();
	// the narrower of two: one of them may lead over a bare side or over another edge
	const usual = (gaps: readonly number[]): number => Math.min(gaps[1] - gaps[0], gaps[2] - gaps[1]);
	return [back[0] / usual(back), onwards[0] / usual(onwards)];
}

/**
 * Whether an edge stands so that a ridge may have run into its flank: at its own place in the row it has left a gap
 * too wide for none and too narrow for a bare band.
 */
function hidesRidge(ridges: readonly Judged[], edges: readonly Judged[]): boolean {
	const [least, most] = SHARP_LIMITS.hidden;
	return edges.some((edge) => {
		const gaps = besideEdge(ridges, edge);
		if (!gaps) return false;
		const [a, b] = gaps;
		if (gaps.some((gap) => gap >= least && gap <= most)) return true;
		return a + b >= 1.7 && a + b <= 2.3 && Math.abs(a - b) > 0.3;
	});
}

/** Whether an edge stands in a row of ridges at the place of one, and is not much prouder than they are. */
function inRow(ridges: readonly Judged[], edges: readonly Judged[]): boolean {
	const there = ridges.flatMap((line) => (line.middle ? [line.middle.share] : []));
	const usual = median(there);
	return edges.some((edge) => {
		const gaps = besideEdge(ridges, edge);
		if (!gaps || !edge.middle || edge.middle.share >= SHARP_LIMITS.prouder * usual) return false;
		return gaps.some((gap) => gap > 0.8 && gap < 1.25);
	});
}

/** Whether ridges at mid-crown have fewer points of the outline from one to the next than it takes to tell them apart. */
function tooClose(ridges: readonly Judged[], points: number): boolean {
	const at = ridges.flatMap((line) => (line.middle ? [line.middle.direction] : [])).sort((a, b) => a - b);
	if (at.length < SHARP_LIMITS.fewRidges) return false;
	const gaps = at.map((direction, i) => apart(direction, at[(i + 1) % at.length]));
	return (median(gaps) / 360) * points < 2 * LINE_LIMITS.pointsPerRidge;
}

/** Height over which a line is a corner without hollows that turns by `least` degrees. */
const cornerRun = (line: Judged, least: number): number =>
	line.values.places.filter(({ crest }) => !crest.raised && crest.turning_deg >= least).length * SPACING;

/** Height over which a line is raised or a corner that may be an edge. */
const sharpRun = (line: Judged): number =>
	cornerRun(line, SHARP_LIMITS.blunt_deg) +
	line.values.places.filter(({ crest }) => crest.raised && crest.excess_deg >= LEAST_EXCESS_DEG).length *
		SPACING;

/** Ridges that pass the mid-crown section; fading when some have so little height left there that the count is in doubt. */
function countAtMiddle(ridges: readonly Judged[]): { count: number; fading: boolean } {
	const there = ridges.flatMap((line) =>
		line.middle ? [{ share: line.middle.share, steady: line.middle.share >= STEADY * line.share }] : [],
	);
	const usual = median(there.map(({ share }) => share));
	const least = Math.min(SURE, Math.max(LINE_LIMITS.prominence, 0.5 * usual));
	const none = Math.min(0.5 * SURE, Math.max(0.3 * LINE_LIMITS.prominence, 0.1 * usual));
	const counts = ({ share, steady }: { share: number; steady: boolean }): boolean =>
		share >= least || (steady && share >= LINE_LIMITS.prominence);
	return {
		count: there.filter(counts).length,
		fading: there.some((ridge) => ridge.share >= none && !counts(ridge)),
	};
}

interface Told {
	edges: Judged[];
	ridges: Judged[];
	unclear: boolean;
}

/** Tells edges from ridges among raised lines. */
function tellEdges(raised: readonly Judged[]): Told {
	const byTop = [...raised].sort((a, b) => b.top - a.top);
	// a few lines that go on where at least three others have ended
	for (let n = Math.min(SHARP_LIMITS.mostEdges, raised.length - SHARP_LIMITS.fewRidges); n >= 1; n--) {
		const { top } = byTop[n - 1];
		if (top >= SHARP_LIMITS.tipward && top - byTop[n].top >= SHARP_LIMITS.goesOn) {
			return tellTall(byTop.slice(0, n), byTop.slice(n));
		}
	}
	return raised.length > SHARP_LIMITS.mostEdges ? tellOutliers(raised) : tellFew(raised);
}

/** Few lines: each by itself. */
function tellFew(raised: readonly Judged[]): Told {
	const told: Told = { edges: [], ridges: [], unclear: false };
	const share = median(raised.map((line) => line.share));
	for (const line of raised) {
		const pointed = line.turning / line.excess;
		const narrow = line.width <= SHARP_LIMITS.narrow_deg;
		const rough = line.values.rough >= SHARP_LIMITS.rough;
		if (line.top < SHARP_LIMITS.leastTop && pointed > SHARP_LIMITS.rounded) told.unclear = true;
		else if (rough || (pointed >= SHARP_LIMITS.pointed && (narrow || line.top >= SHARP_LIMITS.tipward))) {
			told.edges.push(line);
		} else if (pointed <= SHARP_LIMITS.rounded && line.share <= 3 * share) {
			told.ridges.push(line);
		} else told.unclear = true;
	}
	return told;
}

/** A few lines go on towards the tip, the others stop below: edges and ridges. */
function tellTall(tall: readonly Judged[], low: readonly Judged[]): Told {
	const told: Told = { edges: [...tall], ridges: [...low], unclear: false };
	for (const line of tall) {
		if (looksLike(line, low) && !isSqueezed(line, [...tall, ...low])) told.unclear = true;
	}
	return told;
}

/** Whether a line is as prominent and as pointed at mid-crown as ridges are there. */
function looksLike({ middle }: Judged, ridges: readonly Judged[]): boolean {
	const there = ridges.flatMap((line) => (line.middle ? [line.middle] : []));
	if (!middle || there.length < SHARP_LIMITS.fewRidges) return false;
	const near = (a: number, b: number): boolean => a < SHARP_LIMITS.alike * b && b < SHARP_LIMITS.alike * a;
	return (
		near(middle.share, median(there.map((ridge) => ridge.share))) &&
		near(middle.point, median(there.map((ridge) => ridge.point)))
	);
}

/** Many lines of one height are ridges, but for those among them that are clearly other. */
function tellOutliers(raised: readonly Judged[]): Told {
	const told: Told = { edges: [], ridges: [], unclear: false };
	const of = (pick: (line: Judged) => number): number => median(raised.map(pick));
	const point = of((line) => line.point);
	const share = of((line) => line.share);
	const turning = of((line) => line.turning);
	const rough = of((line) => line.values.rough);
	for (const line of raised) {
		const much = line.share >= SHARP_LIMITS.outlier * share;
		const sharp =
			(line.point >= SHARP_LIMITS.outlier * point && standsOut(line, raised, (other) => other.point)) ||
			(line.turning >= SHARP_LIMITS.outlier * turning && standsOut(line, raised, (other) => other.turning));
		const serrated = line.values.rough >= Math.max(SHARP_LIMITS.rough, 3 * rough);
		const squeezed = isSqueezed(line, raised) && line.share >= share && line.turning >= turning;
		if (line.top >= SHARP_LIMITS.leastTop && (sharp || serrated || squeezed)) told.edges.push(line);
		else {
			told.ridges.push(line);
			if (much) told.unclear = true;
		}
	}
	if (told.edges.length > SHARP_LIMITS.mostEdges) return { edges: [], ridges: [...raised], unclear: true };
	return told;
}

/** Whether a figure of a line is clearly greater than those of the lines next to it: round a section they change slowly. */
function standsOut(line: Judged, raised: readonly Judged[], pick: (line: Judged) => number): boolean {
	const nearest = raised
		.filter((other) => other !== line)
		.sort((a, b) => apart(a.direction, line.direction) - apart(b.direction, line.direction));
	return nearest.slice(0, 2).every((other) => pick(line) >= SHARP_LIMITS.overNeighbours * pick(other));
}

/** Whether a line stands closer between its neighbours at mid-crown than they do to theirs. */
function isSqueezed(line: Judged, raised: readonly Judged[]): boolean {
	const at = raised.flatMap((other) => (other.middle ? [other.middle.direction] : [])).sort((a, b) => a - b);
	const i = line.middle ? at.indexOf(line.middle.direction) : -1;
	if (i < 0 || at.length < 5) return false;
	const gaps = at.map((direction, k) => apart(direction, at[(k + 1) % at.length]));
	const widest = Math.max(gaps[i], gaps[(i + gaps.length - 1) % gaps.length]);
	return widest < SHARP_LIMITS.squeezed * median(gaps);
}

function judge(values: LineValues): Judged {
	const { places } = values;
	const up = places.filter((place) => place.crest.raised);
	const raised = up.length * 2 > places.length;
	const of = (pick: (place: LineValues['places'][number]) => number): number =>
		median((raised ? up : places).map(pick));
	const middle = up.filter((place) => Math.abs(place.at - 0.5) <= SPACING * 1.5);
	const clear = places.filter(({ crest, share }) =>
		crest.raised
			? share >= 0.5 * LINE_LIMITS.prominence && crest.excess_deg >= LEAST_EXCESS_DEG
			: crest.turning_deg >= LEAST_TURNING_DEG,
	);
	return {
		values,
		raised,
		turning: of((p) => p.crest.turning_deg),
		excess: of((p) => p.crest.excess_deg),
		width: of((p) => p.crest.width_deg),
		point: of((p) => p.crest.excess_deg / p.crest.width_deg),
		share: of((p) => p.share),
		run: clear.length * SPACING,
		top: clear.length > 0 ? clear[clear.length - 1].at : 0,
		angle: places[places.length >> 1].angle_deg,
		direction: places[places.length >> 1].crest.direction_deg,
		middle:
			middle.length > 0
				? {
						direction: middle[middle.length >> 1].crest.direction_deg,
						share: median(middle.map((p) => p.share)),
						point: median(middle.map((p) => p.crest.excess_deg / p.crest.width_deg)),
					}
				: null,
	};
}

function toCrownLine({ values: { places }, angle }: Judged): CrownLine {
	return {
		angle_deg: angle,
		prominence_mm: median(places.map((place) => place.prominence_mm)),
		from: places[0].at,
		to: places[places.length - 1].at,
	};
}
