import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { z } from 'zod';
import { compileSpecimen } from '../content/compileSpecimen';
import { FEATURE_KINDS, type MarkedFeature, type SpecimenShape } from '../content/exhibit';
import { readYaml } from '../content/readYaml';
import { ID_PATTERN, isPoint } from '../content/schemas';
import type { CrownMarks } from '../domain/measure/crownMeasures';
import { fail, ok, type Result } from '../domain/result';
import type { Vec3 } from '../domain/vec3';
import { brokenBy, deskProblem, type DeskProblem } from './deskProblem';
import { editSpecimen, type SpecimenChanges } from './editSpecimen';
import type { DeskFiles } from './desk/deskFiles';
import { pathInside } from './fsReader';

/** What the page for marking is made from: the specimen's file as it is now. */
export interface MarkingState {
	id: string;
	/** of the text that was read; a save must name it, so that nobody's edit is written over unseen */
	hash: string;
	/** file and units of the scan; null for a model */
	scan: { file: string; units: Extract<SpecimenShape, { kind: 'scan' }>['units'] } | null;
	/** in the scan file's own frame, mm; null while none are marked */
	crown: CrownMarks | null;
	features: MarkedFeature[];
}

/** Largest specimen.yaml that is read here, bytes. */
const MOST_BYTES = 1_000_000;

/** Reads a specimen's marks from its file. */
export async function readForMarking(
	contentDir: string,
	id: string,
): Promise<Result<MarkingState, DeskProblem>> {
	const read = await readSpecimen(contentDir, id);
	if (!read.ok) return read;
	const { text, hash } = read.value;
	const yaml = readYaml(text.replace(/^\uFEFF/, ''));
	const { compiled, findings } = compileSpecimen(yaml);
	const { facts } = compiled;
	if (!facts) {
		const [first] = [...yaml.findings, ...findings].filter(({ severity }) => severity === 'error');
		return fail(deskProblem('specimen-has-errors', brokenBy(first)));
	}
	const { shape, features } = facts;
	return ok({
		id,
		hash,
		scan: shape.kind === 'scan' ? { file: shape.file, units: shape.units } : null,
		crown: shape.kind === 'scan' ? (shape.crown ?? null) : null,
		features,
	});
}

/**
 * Writes marks into a specimen's file, unless that is no longer the text whose hash is `expectedHash`; a version is kept.
 * The hash of the new text comes back.
 */
export async function saveSpecimen(
	desk: Pick<DeskFiles, 'save'>,
	contentDir: string,
	id: string,
	expectedHash: string,
	changes: SpecimenChanges,
): Promise<Result<{ hash: string }, DeskProblem>> {
	const read = await readSpecimen(contentDir, id);
	if (!read.ok) return read;
	const { text, hash } = read.value;
	if (hash !== expectedHash) return fail(deskProblem('changed-meanwhile'));
	const edited = editSpecimen(text, changes);
	if (!edited.ok) return edited;
	const path = `specimens/${id}/specimen.yaml`;
	const saved = await desk.save({
		changes: [{ path, text: edited.value, base: hash }],
		by: 'marking',
		what: { code: 'marked', data: { id } },
		// the new text has been read again; what else is wrong with the folder is no reason to lose the marks
		evenIfBroken: true,
	});
	if (saved.ok) return ok({ hash: saved.value.files[0].base! });
	const { problem } = saved;
	if (problem.code === 'changed-underneath') return fail(deskProblem('changed-meanwhile'));
	if (problem.code === 'not-written') return fail(deskProblem('not-written', { reason: problem.reason }));
	return fail(deskProblem('unreadable'));
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

async function readSpecimen(
	contentDir: string,
	id: string,
): Promise<Result<{ text: string; hash: string }, DeskProblem>> {
	const missing = deskProblem('no-such-specimen', { id: id.slice(0, 60) });
	if (!ID_PATTERN.test(id)) return fail(missing);
	try {
		const path = await pathInside(contentDir, `specimens/${id}/specimen.yaml`);
		const bytes = await readFile(path);
		if (bytes.length <= MOST_BYTES) {
			const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
			return ok({ text, hash: hashOf(bytes) });
		}
	} catch (cause) {
		const code = (cause as NodeJS.ErrnoException).code;
		if (code === 'ENOENT' || code === 'ENOTDIR' || cause instanceof RangeError) return fail(missing);
	}
	return fail(deskProblem('unreadable'));
}

const point = z.custom<Vec3>(isPoint);
const saveSchema = z.strictObject({
	baseHash: z.string(),
	crown: z
		.strictObject({ apex: point, baseMesial: point, baseDistal: point, labial: point.optional() })
		.nullable()
		.optional(),
	features: z
		.array(
			z.strictObject({
				id: z.string().regex(ID_PATTERN).max(60),
				kind: z.enum(FEATURE_KINDS),
				at: z.number().min(-5).max(1),
				where_deg: z.number().min(0).max(360),
			}),
		)
		.max(50)
		.optional(),
});

export interface SaveRequest extends SpecimenChanges {
	baseHash: string;
}

/** What a page sends to have marks saved; null where it is anything else. */
export function parseSave(body: unknown): SaveRequest | null {
	const parsed = saveSchema.safeParse(body);
	return parsed.success ? (parsed.data as SaveRequest) : null;
}
