/** What a curator marks on one tooth, as plain values. Points and directions are in the scan file's own frame, mm. */
import type { FeatureKind, MarkedFeature } from '../../content/exhibit';
import { toTooth, turnToFile, toFile, type FileFrame } from '../../content/fileFrame';
import type { CrownMarks } from '../../domain/measure/crownMeasures';
import { markedFrame, type MarkedFrame } from '../../domain/measure/markedFrame';
import { vec3, type Vec3 } from '../../domain/vec3';
import type { SurfaceHit } from '../../stage/api';

export const CROWN_STEPS = ['apex', 'mesial', 'distal', 'labial'] as const;
export type CrownStep = (typeof CROWN_STEPS)[number];

/** A place that was put or read; its normal is unknown until the surface is there. */
export interface MarkedPoint {
	point: Vec3;
	normal: Vec3 | null;
}

export interface FeatureMark {
	/** stays while the id changes */
	key: number;
	id: string;
	kind: FeatureKind;
	/** as in the file; null for one put here */
	written: { at: number; where_deg: number } | null;
	/** where it was put here; null while it stands as in the file */
	point: MarkedPoint | null;
}

export type CrownPoints = Readonly<Partial<Record<CrownStep, MarkedPoint>>>;

export interface Marks {
	crown: CrownPoints;
	features: readonly FeatureMark[];
}

/** Where the file's own frame is the tooth frame: a model. */
export const SAME_FRAME: FileFrame = {
	rows: [
		[1, 0, 0],
		[0, 1, 0],
		[0, 0, 1],
	],
	offset: [0, 0, 0],
};

/** What a model, or a scan before it has been marked, goes by: the tooth frame itself. */
export const upright = (axialHeight_mm: number, labial: '+z' | '-z'): MarkedFrame => ({
	frame: { origin: [0, 0, 0], u: [1, 0, 0], v: [0, 0, -1], normal: [0, 1, 0] },
	axialHeight_mm,
	labial,
});

/** A direction of the file's frame in the tooth frame. */
export const turnToTooth = ({ rows }: FileFrame, direction: Vec3): Vec3 =>
	toTooth({ rows, offset: [0, 0, 0] }, direction);

export const hitToFile = (frame: FileFrame, { point, normal }: SurfaceHit): MarkedPoint => ({
	point: toFile(frame, point),
	normal: turnToFile(frame, normal),
});

export const marksToTooth = (
	frame: FileFrame,
	{ apex, baseMesial, baseDistal, labial }: CrownMarks,
): CrownMarks => ({
	apex: toTooth(frame, apex),
	baseMesial: toTooth(frame, baseMesial),
	baseDistal: toTooth(frame, baseDistal),
	...(labial ? { labial: turnToTooth(frame, labial) } : {}),
});

/** A labial mark that would tilt the base farther than this was not put on the base: then it only tells the side. */
export const MOST_TILT_deg = 30;

/**
 * The crown's marks, or null while one of the three points is missing. Labial is the direction from the middle of the
 * base to its point, square to the line of the base points.
 */
export function crownMarks({ apex, mesial, distal, labial }: CrownPoints): CrownMarks | null {
	if (!apex || !mesial || !distal) return null;
	const marks = { apex: apex.point, baseMesial: mesial.point, baseDistal: distal.point };
	const plain = markedFrame(marks);
	if (!labial || !plain) return marks;
	const { u, v, origin } = plain.frame;
	const out = vec3.subtract(labial.point, origin);
	const square = vec3.subtract(out, vec3.scale(u, vec3.dot(out, u)));
	const side = vec3.dot(square, v);
	if (!(Math.abs(side) > 0)) return marks;
	const leans = Math.abs(side) < vec3.norm(square) * Math.cos((MOST_TILT_deg * Math.PI) / 180);
	return { ...marks, labial: vec3.normalise(leans ? vec3.scale(v, side) : square) };
}

/** The points of marks that were read; the labial one lies half a base's length out. */
export function crownPoints(marks: CrownMarks | null): CrownPoints {
	if (!marks) return {};
	const { apex, baseMesial, baseDistal, labial } = marks;
	const at = (point: Vec3): MarkedPoint => ({ point, normal: null });
	const points = { apex: at(apex), mesial: at(baseMesial), distal: at(baseDistal) };
	if (!labial) return points;
	const middle = vec3.lerp(baseMesial, baseDistal, 0.5);
	const half = vec3.distance(baseMesial, baseDistal) / 2;
	return { ...points, labial: at(vec3.add(middle, vec3.scale(vec3.normalise(labial), half))) };
}

/** Features as they were read. */
export const featureMarks = (features: readonly MarkedFeature[]): FeatureMark[] =>
	features.map(({ id, kind, at, where_deg }, key) => ({
		key,
		id,
		kind,
		written: { at, where_deg },
		point: null,
	}));

/** Ids of features, as the content folder takes them. */
const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const LONGEST_ID = 60;

/** What is wrong with an id, or null. `others` are the ids in use. */
export function idFault(id: string, others: readonly string[]): 'empty' | 'letters' | 'taken' | null {
	if (id === '') return 'empty';
	if (!ID.test(id) || id.length > LONGEST_ID) return 'letters';
	return others.includes(id) ? 'taken' : null;
}

/** A free id that says what the feature is: `pit`, `pit-2`. */
export function freeId(kind: FeatureKind, others: readonly string[]): string {
	let id: string = kind;
	for (let n = 2; others.includes(id); n += 1) id = `${kind}-${n}`;
	return id;
}
