import { crests, smoothRound, tangents } from './crests';
import type { CrownLine, MeasureWarning } from './crownMeasures';
import type { PlaneFrame } from '../mesh/section';
import { vec3, type Vec3 } from '../vec3';
import type { FoundFacet } from './wornFacets';
import { HIGHEST, LEVELS, LOWEST, type OutlineStack } from './outlineStack';
import { thirdHarmonic } from './outlineShape';
import { lobes } from './lobes';
import { median } from './median';
import { DIRECTIONS } from './polarOutline';
import { sortLines, type LineValues } from './sortLines';
import { smoothUp } from './smoothUp';
import { trackLines, type Line } from './trackLines';

/** What limits the count of ridges and edges; ours. */
export const LINE_LIMITS = {
	/** points of the mid-crown outline, at least: five to each of twelve ridges, two triangles to a point */
	outlinePoints: 120,
	/** points of the outline (two triangles each) from one ridge to the next, at least */
	pointsPerRidge: 4,
	/** a line lower than this share of the section's mean radius is not counted: a few times what flat triangles make */
	prominence: 0.01,
	/** height that a ridge must keep to, fraction of the crown's: noise and serrations come and go within less */
	ridgeRun: 0.15,
	/** height that a sharp edge must keep to */
	carinaRun: 0.25,
	/** hollows beside a ridge turn back by this much at least, degrees; flat triangles make up to 2 */
	hollow_deg: 4,
	/** and by this many deviations of the noise */
	hollowOverNoise: 4,
	/** lobes of a section without ridges, at most: a triangle with keels has no more */
	mostLobes: 7,
	/** third harmonic (see OUTLINE_LIMITS) from which the corners of the section hide ridges: half of a triangle's */
	corneredA3: 0.12,
	/** more noise than this in the tangent hides low ridges, degrees: those of 3 % turn by 15 and more */
	noise_deg: 2.5,
} as const;

/** What the lines of a crown are told with. */
export interface LineOptions {
	/** of the crown's base */
	frame: PlaneFrame;
	/** +1 where v of the frame looks to labial, -1 where it looks to lingual */
	labialSide: 1 | -1;
	/** axial height, mm */
	height: number;
	/** the border of a facet is sharp, but no edge of the crown */
	facets: readonly FoundFacet[];
}

export interface FoundLines {
	ridgeCount: number | null;
	ridges: CrownLine[];
	carinaCount: number | null;
	carinae: CrownLine[];
	warnings: MeasureWarning[];
}

/** Smoothing along the height, levels (about 2.5 % of it). */
const SMOOTH_LEVELS = 2.5;
/** Smoothing round the section, directions: a quarter of the mesh's spacing within these; coarser ones where there is noise. */
const SMOOTH_ROUND = { least: 1.2, most: 2.2, perPoint: 600, noisy: [3.2, 4.6] } as const;
/** The second look is so much smoother. */
const AGAIN = 1.35;
/** Highest level at which serrations are looked for. */
const ROUGH_UP_TO = 0.55;
/** A crest nearer than this to a facet, over the crown's height, is its border. */
const FACET_BORDER = 0.02;
/** So few ridges may be edges where triangles are tilted by more than this, degrees. */
const MOST_LONE = 4;
const ROUGH_TILT_DEG = 0.6;
/** Share of the levels, at most, that may cross a hole: a straight line over it has corners that no tooth has. */
const MOST_OPEN = 0.4;
/** Fewest levels with an outline. */
const FEWEST_LEVELS = 70;

/**
 * Ridges and sharp edges of a crown: the crests of all its sections (crests.ts), joined over the height (trackLines.ts)
 * and told apart (sortLines.ts). Convex sections have no ridges, whatever their kind, for they have no hollows.
 */
export function crownLines(
	{ at, outlines, open }: OutlineStack,
	options: LineOptions,
): FoundLines & { tilt_deg: number } {
	const level = Math.round(((0.5 - LOWEST) / (HIGHEST - LOWEST)) * (LEVELS - 1));
	const middle = outlines[level];
	const present = outlines.filter((outline) => outline !== null).length;
	if (!middle || present < FEWEST_LEVELS || middle.points < LINE_LIMITS.outlinePoints) {
		return untold(
			'ridges-not-resolved',
			`The mesh is too coarse for ridges and edges: ${middle?.points ?? 0} points round the mid-crown section, ${LINE_LIMITS.outlinePoints} are needed.`,
		);
	}
	if (open > MOST_OPEN * present) {
		return untold(
			'lines-across-holes',
			'Most sections cross a hole in the mesh, where lines would be made up: ridges and edges are not counted.',
		);
	}
	const raw = outlines.map((outline) => outline?.logRadius ?? null);
	const even = smoothUp(raw, SMOOTH_LEVELS);
	const finest = Math.min(
		SMOOTH_ROUND.most,
		Math.max(SMOOTH_ROUND.least, SMOOTH_ROUND.perPoint / middle.points),
	);
	const smoothings = [finest, ...SMOOTH_ROUND.noisy];
	const cornered = thirdHarmonic(middle) > LINE_LIMITS.corneredA3;
	const facetAtMiddle = options.facets.some((facet) => facet.from < 0.5 && facet.to > 0.5);
	const usual = usualJumps(raw, even);
	// what noise of the radius tilts triangles by; the outline has two points to each of them
	const tilt_deg = (Math.atan2(usual[level] * middle.points, 4 * Math.PI) * 180) / Math.PI;
	const look = (sigma: number): FoundLines & { noise: number } => {
		const rows = even.map((row) => smoothRound(row, sigma));
		const noise = tangentNoise(rows);
		const hollow = Math.max(LINE_LIMITS.hollow_deg, LINE_LIMITS.hollowOverNoise * noise);
		const lines = trackLines(rows.map((row) => crests(row, hollow)));
		const values = lines.map((line) => ({
			...valuesOf(line, at, outlines, options),
			rough: roughness(line, at, raw, even, usual),
		}));
		return {
			...sortLines(values, { noise_deg: noise, points: middle.points, cornered, facetAtMiddle }),
			noise,
		};
	};
	for (const sigma of smoothings) {
		const { noise, ...found } = look(sigma);
		const clear = noise * LINE_LIMITS.hollowOverNoise <= LINE_LIMITS.hollow_deg * 1.5;
		if (clear || sigma === smoothings[smoothings.length - 1])
			return {
				...withoutLobes(onRoughSurface(agreed(found, look(sigma * AGAIN)), tilt_deg), even[level]),
				tilt_deg,
			};
	}
	throw new RangeError('no smoothing to look with');
}

/** On a rough surface a few ridges without an edge may be edges with teeth, which are rough themselves. */
function onRoughSurface(found: FoundLines, tilt_deg: number): FoundLines {
	const { ridgeCount, carinaCount } = found;
	if (!ridgeCount || carinaCount !== 0 || ridgeCount > MOST_LONE || tilt_deg < ROUGH_TILT_DEG) return found;
	const warning = {
		code: 'ridges-edges-alike',
		message: 'On this rough surface the few raised lines may be ridges or toothed edges: none are counted.',
	};
	return { ...found, ridgeCount: null, carinaCount: null, warnings: [...found.warnings, warning] };
}

/** A section with many lobes but no hollows may have low ridges. */
function withoutLobes(found: FoundLines, middle: Float64Array): FoundLines {
	if (found.ridgeCount !== 0 || lobes(middle) <= LINE_LIMITS.mostLobes) return found;
	const warning = {
		code: 'ridges-low',
		message: 'The mid-crown section has many low lobes without hollows between them: ridges are not counted.',
	};
	return { ...found, ridgeCount: null, warnings: [...found.warnings, warning] };
}

/** Keeps the counts on which two looks at one crown, the second of them smoother, agree. */
function agreed(first: FoundLines, second: FoundLines): FoundLines {
	const ridges =
		first.ridgeCount === null || second.ridgeCount === null || first.ridgeCount === second.ridgeCount;
	const edges =
		first.carinaCount === null || second.carinaCount === null || first.carinaCount === second.carinaCount;
	const hidden = second.warnings.find(({ code }) => code === 'ridges-beside-edge');
	if (hidden && first.ridgeCount !== null) {
		const carinaCount = edges ? first.carinaCount : null;
		return { ...first, ridgeCount: null, carinaCount, warnings: [...first.warnings, hidden] };
	}
	if (ridges && edges) return first;
	const warning = {
		code: 'lines-unsure',
		message: 'A smoother look finds other ridges or edges: what differs is not counted.',
	};
	return {
		...first,
		ridgeCount: ridges ? first.ridgeCount : null,
		carinaCount: edges ? first.carinaCount : null,
		warnings: [...first.warnings, warning],
	};
}

const untold = (code: string, message: string): FoundLines & { tilt_deg: number } => ({
	tilt_deg: 0,
	ridgeCount: null,
	ridges: [],
	carinaCount: null,
	carinae: [],
	warnings: [{ code, message }],
});

/**
 * Noise of the outlines' tangents, degrees: what differs from the mean of the levels eight below and eight above, which lie
 * beyond the reach of the smoothing. The median is not moved by a few edges with serrations.
 */
function tangentNoise(rows: readonly Float64Array[]): number {
	const apartBy = 8;
	const angles = rows.map(tangents);
	const off: number[] = [];
	for (let i = apartBy + 8; i < rows.length - apartBy - 8; i += 3) {
		for (let k = 0; k < DIRECTIONS; k += 5) {
			const smooth = (angles[i - apartBy][k] + angles[i + apartBy][k]) / 2;
			off.push(Math.abs(angles[i][k] - smooth));
		}
	}
	off.sort((a, b) => a - b);
	// median to deviation, and the share of the mean of two
	return off.length > 0 ? off[off.length >> 1] / 0.6745 / Math.sqrt(1.5) : Infinity;
}

/**
 * How much the crest's radius jumps from level to level, beyond what the rest of the section does, over its prominence: serrations
 * do, ridges do not. Up to mid-crown only, where ridges and edges stand side by side.
 */
function roughness(
	{ levels, crests: found }: Line,
	at: Float64Array,
	raw: readonly (Float64Array | null)[],
	even: readonly Float64Array[],
	usual: Float64Array,
): number {
	const jumps = levels.flatMap((level, i) => {
		const k = Math.round(found[i].direction_deg * (DIRECTIONS / 360)) % DIRECTIONS;
		const row = raw[level];
		if (!row || at[level] > ROUGH_UP_TO || !(found[i].prominence > 0)) return [];
		return [Math.max(0, Math.abs(row[k] - even[level][k]) - 2 * usual[level]) / found[i].prominence];
	});
	return median(jumps) || 0;
}

/** Typical jump of the radius between neighbouring levels, per level. */
function usualJumps(raw: readonly (Float64Array | null)[], even: readonly Float64Array[]): Float64Array {
	return Float64Array.from(raw, (row, level) => {
		const jumps: number[] = [];
		for (let k = 0; row && k < DIRECTIONS; k += 5) jumps.push(Math.abs(row[k] - even[level][k]));
		return median(jumps) || 0;
	});
}

function liesOn({ middle, normal, reach_mm }: FoundFacet, point: Vec3, within_mm: number): boolean {
	const off = vec3.subtract(point, middle);
	return Math.abs(vec3.dot(off, normal)) < within_mm && vec3.norm(off) < reach_mm + within_mm;
}

function valuesOf(
	{ levels, crests: found }: Line,
	at: Float64Array,
	outlines: OutlineStack['outlines'],
	{ frame, labialSide, height, facets }: LineOptions,
): Omit<LineValues, 'rough'> {
	const places = levels.map((level, i) => {
		const crest = found[i];
		const outline = outlines[level];
		if (!outline) return null;
		const angle = (crest.direction_deg * Math.PI) / 180;
		const [c, s] = [Math.cos(angle), Math.sin(angle)];
		const [xx, xy, yy] = outline.stretch;
		const k = Math.round(crest.direction_deg * (DIRECTIONS / 360)) % DIRECTIONS;
		const radius = Math.exp(outline.logRadius[k]);
		// a step along the radius in the stretched plane, along the outline's normal in the plain one
		const prominence_mm = (crest.prominence * radius) / Math.hypot(xx * c + xy * s, xy * c + yy * s);
		const det = xx * yy - xy * xy;
		const x = ((yy * c - xy * s) * radius) / det;
		const y = ((xx * s - xy * c) * radius) / det;
		const [mx, my] = outline.middle;
		const [u, v] = [outline.centre[0] + x, outline.centre[1] + y];
		if (facets.length > 0) {
			const point = [frame.u, frame.v, frame.normal].reduce(
				(sum, axis, j) => vec3.add(sum, vec3.scale(axis, [u, v, at[level] * height][j])),
				frame.origin,
			);
			if (facets.some((facet) => liesOn(facet, point, FACET_BORDER * height))) return null;
		}
		const angle_deg = (Math.atan2(labialSide * (v - my), u - mx) * 180) / Math.PI;
		return {
			level,
			at: at[level],
			crest,
			prominence_mm,
			share: prominence_mm / outline.meanRadius_mm,
			angle_deg: (angle_deg + 360) % 360,
		};
	});
	return { places: places.filter((place) => place !== null) };
}
