import { isMap, isScalar, isSeq, parseDocument, type Document, type YAMLMap } from 'yaml';
import { compileSpecimen } from '../content/compileSpecimen';
import type { MarkedFeature } from '../content/exhibit';
import type { Finding } from '../content/finding';
import { readYaml } from '../content/readYaml';
import type { CrownMarks } from '../domain/measure/crownMeasures';
import { fail, ok, type Result } from '../domain/result';
import { SIDE_ANGLE_DEG, SIDES } from '../domain/tooth/form';
import type { Vec3 } from '../domain/vec3';
import { canonicalJson } from './canonicalJson';
import { brokenBy, deskProblem, type DeskProblem } from './deskProblem';
import { yamlSplice, type YamlSplice } from './yamlSplice';

export interface SpecimenChanges {
	/** marks of the crown in the file's own frame, mm; null takes them away; absent leaves them */
	crown?: CrownMarks | null;
	/** the marked features as they shall be, all of them; absent leaves them */
	features?: readonly MarkedFeature[];
}

/** Keys of a crown in specimen.yaml, in the order in which they are written. */
const CROWN_KEYS = [
	['apex_mm', 'apex'],
	['base_mesial_mm', 'baseMesial'],
	['base_distal_mm', 'baseDistal'],
	['labial', 'labial'],
] as const satisfies readonly (readonly [string, keyof CrownMarks])[];

/**
 * Writes marks into the text of a specimen.yaml. Comments, the order of lines, line ends and everything
 * that does not change stay byte for byte. Marks are rounded to a micrometre, directions to four places.
 * The new text has been read again: it says what was asked for, and nothing else in it has changed.
 */
export function editSpecimen(text: string, changes: SpecimenChanges): Result<string, DeskProblem> {
	const mark = text.startsWith('\uFEFF') ? '\uFEFF' : '';
	const body = text.slice(mark.length);
	const before = compileSpecimen(readYaml(body));
	const broken = errorIn([...readYaml(body).findings, ...before.findings]);
	if (broken || !before.compiled.facts) return fail(deskProblem('specimen-has-errors', brokenBy(broken)));
	if (changes.crown !== undefined && before.compiled.facts.shape.kind !== 'scan') {
		return fail(deskProblem('not-a-scan'));
	}
	const wanted = rounded(changes);
	const document = parseDocument(body, { uniqueKeys: false, logLevel: 'error' });
	const splice = yamlSplice(body);
	if (wanted.crown !== undefined) setCrown(document, splice, wanted.crown);
	if (wanted.features) setFeatures(document, splice, wanted.features);
	const made = splice.result();

	const after = readYaml(made);
	const compiled = compileSpecimen(after);
	const wrong = errorIn([...after.findings, ...compiled.findings]);
	if (wrong) return fail(deskProblem('marks-not-possible', brokenBy(wrong)));
	return saysSo(readYaml(body).value, after.value, compiled.compiled.facts, wanted)
		? ok(mark + made)
		: fail(deskProblem('not-editable'));
}

const errorIn = (findings: readonly Finding[]): Finding | undefined =>
	findings.find(({ severity }) => severity === 'error');

function setCrown(document: Document, splice: YamlSplice, crown: CrownMarks | null): void {
	const scan = document.getIn(['shape', 'scan'], true) as YAMLMap;
	const pair = scan.items.find(({ key }) => isScalar(key) && key.value === 'crown');
	if (crown === null) {
		if (pair) splice.removePair(scan, 'crown');
		return;
	}
	const points = CROWN_KEYS.flatMap(([key, name]) => {
		const point = crown[name];
		return point ? [[key, point] as const] : [];
	});
	if (!pair) {
		if (!scan.flow) {
			const lines = ['crown:', ...points.map(([key, point]) => `  ${key}: ${list(point)}`)];
			splice.addLinesAfter(scan.items.at(-1)!, splice.indentOf(scan), lines);
		} else splice.addPair(scan, 'crown', flowCrown(points));
		return;
	}
	const old = pair.value;
	if (!isMap(old)) return splice.replaceAll(pair, ` ${flowCrown(points)}`);
	for (const [key, point] of points) {
		const value = old.get(key, true) as unknown;
		if (value === undefined) splice.addPair(old, key, list(point));
		else if (isSeq(value)) {
			value.items.forEach((item, i) => {
				if (isScalar(item) && item.value !== point[i]) splice.replace(item, String(point[i]));
			});
		}
	}
	if (!crown.labial && old.has('labial')) splice.removePair(old, 'labial');
}

function setFeatures(document: Document, splice: YamlSplice, features: readonly MarkedFeature[]): void {
	const top = document.contents as YAMLMap;
	const pair = top.items.find(({ key }) => isScalar(key) && key.value === 'features');
	const old = pair && isSeq(pair.value) ? pair.value : null;
	const items = old?.items.filter((item) => isMap(item)) ?? [];
	const known = new Map(items.map((item) => [item.get('id'), item]));
	const kept = features.filter(({ id }) => known.has(id));
	const added = features.filter(({ id }) => !known.has(id));

	if (!old || kept.length === 0) {
		const lines = features.map((feature) => `  - ${flowFeature(feature)}`);
		if (!pair) {
			if (lines.length === 0) return;
			const shape = top.items.find(({ key }) => isScalar(key) && key.value === 'shape')!;
			splice.addLinesAfter(shape, 0, ['', 'features:', ...lines]);
		} else splice.replaceAll(pair, lines.length === 0 ? ' []' : `${splice.eol}${lines.join(splice.eol)}`);
		return;
	}
	const stays = (item: unknown) => isMap(item) && kept.some(({ id }) => id === item.get('id'));
	splice.keepItems(old, (i) => stays(old.items[i]));
	for (const feature of kept) setFeature(splice, known.get(feature.id)!, feature);
	const last = old.items.findLastIndex(stays);
	for (const feature of added) splice.addItem(old, last, flowFeature(feature));
}

function setFeature(splice: YamlSplice, item: YAMLMap, { at, where_deg, kind }: MarkedFeature): void {
	const value = (key: string) => {
		const node = item.get(key, true) as unknown;
		return isScalar(node) ? node : undefined;
	};
	const [oldAt, oldWhere, oldKind] = [value('at'), value('where'), value('kind')];
	if (oldAt && oldAt.value !== at) splice.replace(oldAt, String(at));
	if (oldWhere && degrees(oldWhere.value) !== where_deg) splice.replace(oldWhere, where(where_deg));
	if (oldKind) {
		if (oldKind.value !== kind) splice.replace(oldKind, kind);
	} else if (kind !== 'other') splice.addPair(item, 'kind', kind);
}

const degrees = (written: unknown): unknown =>
	typeof written === 'string' ? SIDE_ANGLE_DEG[written as keyof typeof SIDE_ANGLE_DEG] : written;
const where = (deg: number): string => SIDES.find((side) => SIDE_ANGLE_DEG[side] === deg) ?? String(deg);
const list = (point: Vec3): string => `[${point.join(', ')}]`;
const flowCrown = (points: readonly (readonly [string, Vec3])[]): string =>
	`{ ${points.map(([key, point]) => `${key}: ${list(point)}`).join(', ')} }`;
const flowFeature = ({ id, at, where_deg, kind }: MarkedFeature): string =>
	`{ id: ${id}, at: ${at}, where: ${where(where_deg)}${kind === 'other' ? '' : `, kind: ${kind}`} }`;

function rounded({ crown, features }: SpecimenChanges): SpecimenChanges {
	const round = (value: number, places: number): number => Number(value.toFixed(places)) + 0;
	const point = ([x, y, z]: Vec3, places: number): Vec3 => [
		round(x, places),
		round(y, places),
		round(z, places),
	];
	return {
		...(crown === undefined
			? {}
			: {
					crown: crown && {
						apex: point(crown.apex, 3),
						baseMesial: point(crown.baseMesial, 3),
						baseDistal: point(crown.baseDistal, 3),
						...(crown.labial ? { labial: point(crown.labial, 4) } : {}),
					},
				}),
		...(features && {
			features: features.map((feature) => ({
				...feature,
				at: round(feature.at, 3),
				where_deg: round(feature.where_deg, 1),
			})),
		}),
	};
}

/** Whether the new file says what was asked for, and the same as before about everything else. */
function saysSo(
	before: unknown,
	after: unknown,
	facts: ReturnType<typeof compileSpecimen>['compiled']['facts'],
	wanted: SpecimenChanges,
): boolean {
	if (!facts) return false;
	const rest = (value: unknown): string => {
		const copy = JSON.parse(canonicalJson(value)) as Record<string, unknown>;
		const scan = (copy.shape as { scan?: { crown?: unknown } } | undefined)?.scan;
		if (wanted.crown !== undefined) delete scan?.crown;
		if (wanted.features) delete copy.features;
		return canonicalJson(copy);
	};
	if (rest(before) !== rest(after)) return false;
	if (wanted.crown !== undefined) {
		const crown = facts.shape.kind === 'scan' ? (facts.shape.crown ?? null) : null;
		if (canonicalJson(crown) !== canonicalJson(wanted.crown)) return false;
	}
	const sorted = (features: readonly MarkedFeature[]): string =>
		canonicalJson([...features].sort((a, b) => (a.id < b.id ? -1 : 1)));
	return !wanted.features || sorted(facts.features) === sorted(wanted.features);
}
