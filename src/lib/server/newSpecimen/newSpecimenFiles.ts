import { fail, ok, type Result } from '../../domain/result';
import type { NewSpecimen } from '../../content/newSpecimen';
import { scanName } from '../../content/newSpecimen';
import { scaledModel } from '../../content/scaledModel';
import type { UploadFormat } from '../../content/scanUpload';
import { editContent } from '../desk/editContent';
import { newLabel } from '../table/labelFile';
import { yamlKey, yamlScalar } from '../table/yamlScalar';

/** The form that a new model begins with: `shape.model` of a specimen's file, in the keys of the file. */
export type ModelLines = Readonly<Record<string, unknown>> & { crown_height_mm: number };
export type NewShapeFrom = { kind: 'scan'; format: UploadFormat } | { kind: 'model'; model: ModelLines };

/** What a specimen.yaml is begun with where the folder has no templates. */
const BARE = `accession:
group:
part:
preservation:
identified:
  by:
  certainty:
shape:
licence:
rights_holder:
sources: []
`;
/** Where a template's own notes stand behind a line. */
const NOTE_AT = 28;

/**
 * The texts of a new specimen's files, a draft: the template's with what was asked for. The template's notes stay, but for
 * those about copying it and filling it in. `template` is its specimen.yaml; null where there is none.
 * Fails where the template is written in a way that cannot be filled in.
 */
export function newSpecimenFiles(
	asked: NewSpecimen,
	template: string | null,
	from: NewShapeFrom,
): Result<{ facts: string; label: string }, 'template'> {
	const facts = newFacts(asked, begun(template ?? BARE), from) ?? newFacts(asked, BARE, from);
	if (facts === null) return fail('template');
	const { title, short, alt, text } = asked;
	return ok({ facts, label: newLabel({ title, short, text, ...(alt.trim() && { alt: alt.trim() }) }) });
}

/** A template without what it says about itself, with a bed's line to fill in, and a draft. */
function begun(template: string): string {
	const lines = template
		.replace(/^\uFEFF/, '')
		.replace(/\r\n?/g, '\n')
		.split('\n');
	const first = lines.findIndex((line) => !line.startsWith('#'));
	const head = lines.slice(0, first).filter((line) => line.includes('yaml-language-server'));
	return [...head, ...lines.slice(first)].join('\n').replace(/[ \t]+# for example\b.*$/gm, '');
}

function newFacts(asked: NewSpecimen, template: string, from: NewShapeFrom): string | null {
	const { shape } = asked;
	let text = template.replace(/^(?=accession:)/m, 'status: draft\n');
	if (asked.bed !== '') text = text.replace(/^# bed:.*$\n/m, '');
	const fields: Record<string, string | number | string[] | null> = {
		accession: asked.accession.trim(),
		group: asked.group,
		part: asked.part,
		preservation: asked.preservation,
		...(asked.bed !== '' && { bed: asked.bed }),
		'identified.by': asked.by.trim(),
		'identified.certainty': asked.certainty,
		licence: asked.licence,
		rights_holder: asked.rightsHolder.trim(),
		sources: asked.sources,
	};
	if (from.kind === 'scan' && shape.kind === 'scan') {
		const declared = shape.crownHeight_mm;
		text = block(text, 'shape', [
			'  scan:',
			`    file: ${scanName(from.format)}`,
			noted(text, 'units', `    units: ${shape.units}`, 'um, mm, cm, m or in'),
		]);
		text = declared === null ? text.replace(/^# What the card [^\n]*\n(?=declared:)/m, '') : text;
		text = block(text, 'declared', declared === null ? null : [`  crown_height_mm: ${declared}`]);
		if (declared !== null && !/^declared:/m.test(text)) fields['declared.crown_height_mm'] = declared;
	} else if (from.kind === 'model' && shape.kind === 'model') {
		const { crownHeight_mm, baseLength_mm, baseWidth_mm } = shape;
		const model = {
			...scaledModel(from.model, crownHeight_mm / from.model.crown_height_mm),
			crown_height_mm: crownHeight_mm,
			base_length_mm: baseLength_mm,
			base_width_mm: baseWidth_mm,
		};
		text = block(text, 'shape', ['  model:', ...modelLines(text, model)]);
		// marked places belong to the tooth that the form was taken from
		text = text.replace(/^features:.*\n(?:[ \t]+.*\n)*/m, 'features: []\n');
	}
	const edited = editContent('specimens/new/specimen.yaml', text, { fields });
	return edited.ok ? edited.value : null;
}

/** The text with other lines below a key at its left margin; without the key where they are null. */
function block(text: string, key: string, lines: readonly string[] | null): string {
	const found = new RegExp(`^${key}:.*\\n(?:(?:[ \\t]+\\S.*)\\n)*`, 'm');
	return text.replace(found, () => (lines === null ? '' : `${key}:\n${lines.join('\n')}\n`));
}

/** A line with the note that the template has behind it. */
function noted(template: string, key: string, line: string, otherwise = ''): string {
	const found = new RegExp(`^[ \\t]*${key}:.*?[ \\t]# ([^\\n]*)$`, 'm').exec(template)?.[1];
	const note = found ?? otherwise;
	return note === '' ? line : `${line.padEnd(NOTE_AT - 1)} # ${note}`;
}

function modelLines(template: string, model: Readonly<Record<string, unknown>>): string[] {
	return Object.entries(model).flatMap(([key, value]) => {
		const isList = Array.isArray(value) && value.length > 0 && value.every(isMap);
		if (!isList) return [noted(template, key, `    ${yamlKey(key)}: ${flow(value)}`)];
		return [noted(template, key, `    ${yamlKey(key)}:`), ...value.map((entry) => `      - ${flow(entry)}`)];
	});
}

const isMap = (value: unknown): value is Record<string, unknown> =>
	typeof value === 'object' && value !== null && !Array.isArray(value);

/** On one line, as YAML. */
function flow(value: unknown): string {
	if (Array.isArray(value)) return `[${value.map(flow).join(', ')}]`;
	if (isMap(value))
		return `{ ${Object.entries(value)
			.map(([key, of]) => `${yamlKey(key)}: ${flow(of)}`)
			.join(', ')} }`;
	return yamlScalar(value as string | number | boolean);
}
