import type { Reference } from './compileSpecimen';
import { report, type ContentFiles } from './contentFiles';
import { keepSources, numbersHaveSources, textsOf, type Items } from './crossCheckItems';
import type { Language } from './crossCheckWords';
import type { SpecimenDraft } from './draft';
import type { LabelText } from './exhibit';
import { placeOf } from './explainIssue';
import { fieldPath } from './fieldPath';
import { SCAN_ENDING, soundPath, textPath } from './fileKind';
import type { Place } from './finding';
import { suggest } from './suggest';

/** Specimens that can be shown, each with its labels; whatever is wrong with one leaves out that one. */
export function crossCheckSpecimens(
	files: ContentFiles,
	languages: readonly Language[],
	items: Items,
): SpecimenDraft[] {
	const specimens: SpecimenDraft[] = [];
	const scans = scansByFolder(files);
	const accessions = new Map<string, string>();
	for (const [path, { kind, compiled }] of files.byPath) {
		if (kind.kind !== 'specimen') continue;
		const own = compiled?.specimen;
		const labels = textsOf(files, languages, 'specimen', kind.id, (text) => text.label);
		if (own?.features) features(files, languages, kind.id, own.features, labels);
		if (!own) continue;

		const at = ({ path: steps }: Reference) => [placeOf(compiled!.places, steps), fieldPath(steps)] as const;
		const whole = [
			knownGroup(files, path, items, own.group, at),
			knownBed(files, path, items, own.bed, at),
			livingHasNoBed(files, path, items, own, at),
			scanIsThere(files, path, kind.id, own.scan, scans.get(kind.id) ?? new Map(), at),
			ownAccession(files, path, accessions, own.accession, at),
		].every(Boolean);
		numbersHaveSources(files, languages, 'specimen', kind.id, own.sources);
		const sources = keepSources(files, items, path, own.sources);
		if (!whole || !sources || !own.facts || !labels) continue;

		const named = own.facts.features.filter(({ id }) => labels[languages[0].code].features[id]);
		const shape = own.facts.shape;
		specimens.push({
			id: kind.id,
			...own.facts,
			shape:
				shape.kind === 'model'
					? { ...shape, basedOn: shape.basedOn.filter((id) => items.sources.has(id)) }
					: shape,
			features: named,
			sources: own.facts.sources.filter((id) => items.sources.has(id)),
			text: withSounds(
				files,
				kind.id,
				withFeatureNames(
					labels,
					languages,
					named.map(({ id }) => id),
				),
			),
		});
	}
	return specimens;
}

type At = (reference: Reference) => readonly [Place, string];

function knownGroup(
	files: ContentFiles,
	file: string,
	items: Items,
	group: Reference | undefined,
	at: At,
): boolean {
	if (!group) return false;
	if (items.groups.has(group.id)) return true;
	if (items.leftOut.groups.has(group.id))
		report(files, file, 'group-left-out', ...at(group), { found: group.id });
	else {
		const meant = suggest(group.id, [...items.groups.keys(), ...items.leftOut.groups]);
		report(files, file, 'unknown-group', ...at(group), { found: group.id, meant });
	}
	return false;
}

function knownBed(
	files: ContentFiles,
	file: string,
	items: Items,
	bed: Reference | undefined,
	at: At,
): boolean {
	if (!bed || items.beds.has(bed.id)) return true;
	if (items.leftOut.beds.has(bed.id)) report(files, file, 'bed-left-out', ...at(bed), { found: bed.id });
	else {
		const meant = suggest(bed.id, [...items.beds.keys(), ...items.leftOut.beds]);
		report(files, file, 'unknown-bed', ...at(bed), { found: bed.id, meant });
	}
	return false;
}

function livingHasNoBed(
	files: ContentFiles,
	file: string,
	items: Items,
	own: { group?: Reference; bed?: Reference },
	at: At,
): boolean {
	const group = own.group && items.groups.get(own.group.id);
	if (!group) return true;
	const name = Object.values(group.text)[0].name;
	if (group.living && own.bed) {
		report(files, file, 'bed-for-living', ...at(own.bed), { group: name });
		return false;
	}
	if (!group.living && !own.bed) report(files, file, 'bed-missing', ...at(own.group!), { group: name });
	return true;
}

function scanIsThere(
	files: ContentFiles,
	file: string,
	id: string,
	scan: Reference | undefined,
	there: ReadonlyMap<string, number>,
	at: At,
): boolean {
	// a name that cannot be right has its own message already
	if (!scan || /[\\/]/.test(scan.id) || !SCAN_ENDING.test(scan.id)) return true;
	const size = there.get(scan.id);
	if (size === 0) report(files, file, 'empty-scan', ...at(scan), { found: scan.id });
	if (size !== undefined) return size > 0;
	const names = [...there.keys()].filter((name) => SCAN_ENDING.test(name));
	const meant = suggest(scan.id, names) ?? (names.length === 1 ? names[0] : undefined);
	report(files, file, 'missing-scan', ...at(scan), { found: scan.id, folder: `specimens/${id}/`, meant });
	return false;
}

function ownAccession(
	files: ContentFiles,
	file: string,
	taken: Map<string, string>,
	accession: Reference | undefined,
	at: At,
): boolean {
	if (!accession) return true;
	const number = accession.id.trim().replace(/\s+/g, ' ').toLowerCase();
	const first = taken.get(number);
	if (first === undefined) taken.set(number, file);
	else report(files, file, 'duplicate-accession', ...at(accession), { found: accession.id, file: first });
	return first === undefined;
}

function scansByFolder(files: ContentFiles): Map<string, Map<string, number>> {
	const scans = new Map<string, Map<string, number>>();
	for (const { kind, file } of files.byPath.values()) {
		if (kind.kind !== 'asset') continue;
		const there = scans.get(kind.id) ?? new Map<string, number>();
		there.set(kind.name, file.size);
		scans.set(kind.id, there);
	}
	return scans;
}

/** Marked features against the names that each label gives. */
function features(
	files: ContentFiles,
	languages: readonly Language[],
	id: string,
	marked: readonly string[],
	labels: Record<string, LabelText> | null,
): void {
	const [first] = languages;
	for (const language of languages) {
		const path = textPath('specimen', id, language.code);
		const compiled = files.byPath.get(path)?.compiled;
		const label = compiled?.text?.label;
		if (!compiled || !label) continue;
		const named = Object.keys(label.features);
		const under = placeOf(compiled.places, ['features'], 'key');
		for (const feature of new Set(marked)) {
			if (named.includes(feature)) continue;
			const shown = labels?.[first.code]?.features[feature];
			const place = [path, under, fieldPath(['features', feature])] as const;
			if (language === first) {
				report(files, place[0], 'feature-without-name', place[1], place[2], {
					id: feature,
					shown: 'Cutting edge',
				});
			} else if (shown) {
				report(files, place[0], 'feature-not-translated', place[1], place[2], {
					id: feature,
					shown,
					language: first,
				});
			}
		}
		for (const feature of named) {
			if (marked.includes(feature)) continue;
			const steps = ['features', feature];
			const meant = suggest(
				feature,
				marked.filter((other) => !named.includes(other)),
			);
			report(files, path, 'name-without-feature', placeOf(compiled.places, steps, 'key'), fieldPath(steps), {
				id: feature,
				meant,
			});
		}
	}
}

/** Each label with a name for each feature that is shown: its own, or the first language's. */
function withFeatureNames(
	labels: Record<string, LabelText>,
	languages: readonly Language[],
	ids: readonly string[],
): Record<string, LabelText> {
	const first = labels[languages[0].code];
	return Object.fromEntries(
		Object.entries(labels).map(([code, label]) => [
			code,
			{
				...label,
				features: Object.fromEntries(ids.map((id) => [id, label.features[id] ?? first.features[id]])),
			},
		]),
	);
}

/** Each label with its recording, where there is one that holds anything. */
function withSounds(
	files: ContentFiles,
	id: string,
	labels: Record<string, LabelText>,
): Record<string, LabelText> {
	return Object.fromEntries(
		Object.entries(labels).map(([code, label]) => {
			const file = files.byPath.get(soundPath(id, code))?.file;
			return [code, file && file.size > 0 ? { ...label, sound: file.stamp } : label];
		}),
	);
}
