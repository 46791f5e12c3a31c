import type { CrownMarks } from '../domain/measure/crownMeasures';
import { checkForm } from '../domain/tooth/checkForm';
import { SIDE_ANGLE_DEG, type ToothForm } from '../domain/tooth/form';
import { checkFields } from './checkFields';
import { crownFindings } from './crownFindings';
import type { SpecimenDraft } from './draft';
import type { MarkedFeature, SpecimenShape } from './exhibit';
import { idFrom, placeOf } from './explainIssue';
import { fieldPath, valueAt } from './fieldPath';
import { SCAN_ENDING } from './fileKind';
import { finding, type Finding } from './finding';
import { formFinding } from './formFinding';
import { isLicence, suggestLicence } from './licence';
import type { YamlResult } from './readYaml';
import { showFindings } from './shown/showFindings';
import { specimenSchema, type ModelInFile, type ScanInFile, type SpecimenInFile } from './schemas';

/** A name in one file that must exist in another. */
export interface Reference {
	id: string;
	path: (string | number)[];
}

export interface CompiledSpecimen {
	/** absent when the file has errors */
	facts?: Omit<SpecimenDraft, 'id' | 'text'>;
	/** as written, whether or not the rest of the file is right */
	group?: Reference;
	bed?: Reference;
	accession?: Reference;
	scan?: Reference;
	sources: Reference[];
	/** null when they cannot be read */
	features: string[] | null;
}

/** Checks one specimen.yaml by itself. */
export function compileSpecimen(yaml: YamlResult): { compiled: CompiledSpecimen; findings: Finding[] } {
	const { value: raw, places } = yaml;
	const at = (path: readonly PropertyKey[]) => placeOf(places, path);
	const text = (...path: (string | number)[]): Reference | undefined => {
		const id = valueAt(raw, path);
		return typeof id === 'string' && id !== '' ? { id, path } : undefined;
	};
	const texts = (...path: string[]): Reference[] => {
		const items = valueAt(raw, path);
		return Array.isArray(items) ? items.flatMap((_, i) => text(...path, i) ?? []) : [];
	};

	const { value, findings } = checkFields(specimenSchema, raw, places);
	const marked = valueAt(raw, ['features']);
	const ids = Array.isArray(marked) ? marked.flatMap((_, i) => text('features', i, 'id')?.id ?? []) : [];
	const compiled: CompiledSpecimen = {
		group: text('group'),
		bed: text('bed'),
		accession: text('accession'),
		scan: text('shape', 'scan', 'file'),
		sources: [...texts('sources'), ...texts('shape', 'model', 'based_on')],
		features: marked === undefined || Array.isArray(marked) ? ids : null,
	};

	const firstLine = new Map<string, number>();
	ids.forEach((id) => {
		const i = (marked as unknown[]).findIndex(
			(entry, j) => valueAt(entry, ['id']) === id && !firstLine.has(`${id}/${j}`),
		);
		const path = ['features', i, 'id'];
		const first = firstLine.get(id);
		if (first !== undefined)
			findings.push(finding('duplicate-id', at(path), fieldPath(path), { found: id, firstLine: first }));
		else firstLine.set(id, at(path).line);
		firstLine.set(`${id}/${i}`, i);
	});

	const licence = text('licence');
	if (licence && !isLicence(licence.id)) {
		findings.push(
			finding('bad-licence', at(['licence']), 'licence', {
				found: licence.id,
				meant: suggestLicence(licence.id),
			}),
		);
	}
	const shape = value?.shape ?? valueAt(raw, ['shape']);
	if (typeof shape === 'object' && shape !== null && !Array.isArray(shape)) {
		const model = 'model' in shape;
		const scan = 'scan' in shape;
		if (model && scan) findings.push(finding('shape-both', placeOf(places, ['shape'], 'key'), 'shape', null));
		if (!model && !scan)
			findings.push(finding('shape-missing', placeOf(places, ['shape'], 'key'), 'shape', null));
	}
	findings.push(...showFindings(raw, places, ['show']));
	if (compiled.scan) findings.push(...scanName(compiled.scan, at(compiled.scan.path)));
	if (value?.shape.model) {
		const problem = checkForm(formOf(value.shape.model));
		if (problem) findings.push(formFinding(problem, at));
	}
	if (value?.shape.scan?.crown) findings.push(...crownFindings(value.shape.scan.crown, at));
	if (value && findings.every(({ severity }) => severity !== 'error')) compiled.facts = factsOf(value);
	return { compiled, findings };
}

function scanName(scan: Reference, place: { line: number; column: number }): Finding[] {
	const path = fieldPath(scan.path);
	const name = scan.id.split(/[\\/]/).pop() ?? '';
	if (/[\\/]/.test(scan.id) || scan.id === '..') {
		return [
			finding('scan-not-in-folder', place, path, {
				found: scan.id,
				name: name.replace(/^\.+$/, '') || 'scan.stl',
			}),
		];
	}
	if (!SCAN_ENDING.test(scan.id)) {
		const stem = idFrom(scan.id.replace(/\.[^.]*$/, ''));
		return [finding('scan-ending', place, path, { found: scan.id, example: `${stem}.stl` })];
	}
	return [];
}

/** A model of a file as the sculptor wants it. */
export function formOf(model: ModelInFile): ToothForm {
	const { basedOn: _basedOn, carinae, ...rest } = model;
	return { ...rest, carinae: carinae ?? [] };
}

function marksOf({
	apex_mm,
	baseMesial_mm,
	baseDistal_mm,
	labial,
}: NonNullable<ScanInFile['crown']>): CrownMarks {
	return {
		apex: apex_mm,
		baseMesial: baseMesial_mm,
		baseDistal: baseDistal_mm,
		...(labial === undefined ? {} : { labial }),
	};
}

function scanOf({ file, units, crown, colour }: ScanInFile): SpecimenShape {
	return {
		kind: 'scan',
		file,
		units,
		...(crown === undefined ? {} : { crown: marksOf(crown) }),
		...(colour === undefined ? {} : { colour }),
	};
}

function factsOf(file: SpecimenInFile): Omit<SpecimenDraft, 'id' | 'text'> {
	const { model, scan } = file.shape;
	const { bed, features, declared, status, ...rest } = file;
	return {
		...rest,
		...(status === 'draft' ? { status } : {}),
		...(bed === undefined ? {} : { bed }),
		...(declared === undefined ? {} : { declared }),
		shape: model ? { kind: 'model', form: formOf(model), basedOn: model.basedOn ?? [] } : scanOf(scan!),
		features: (features ?? []).map(({ id, at, where, kind }): MarkedFeature => ({
			id,
			kind: kind ?? 'other',
			at,
			where_deg: typeof where === 'number' ? where : SIDE_ANGLE_DEG[where],
		})),
	};
}
