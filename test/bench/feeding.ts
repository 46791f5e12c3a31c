import path from 'node:path';
import { ROOT } from '../../src/scripts/setup.mjs';
import { loadContent } from '../../src/lib/content/loadContent';
import type { SpecimenDraft } from '../../src/lib/content/draft';
import type { Feeding } from '../../src/lib/content/feedingContent';
import { formFacts } from '../../src/lib/domain/compare/formFacts';
import { evidenceOf, type DeclaredTraits } from '../../src/lib/domain/feeding/evidence';
import { formAt } from '../../src/lib/domain/feeding/formAt';
import { rankGuilds } from '../../src/lib/domain/feeding/guilds';
import { placeTooth } from '../../src/lib/domain/feeding/place';
import { asPosition, distanceBetween, type Position } from '../../src/lib/domain/feeding/position';
import type { CrownMeasures } from '../../src/lib/domain/measure/crownMeasures';
import { measureCrown } from '../../src/lib/domain/measure/measureCrown';
import { sculpt } from '../../src/lib/domain/tooth/sculpt';
import { fsReader } from '../../src/lib/server/fsReader';
import { measureFile } from '../../src/lib/server/measureFile';
import { ALL_ROWS, CLADE_ROWS, GROUP_ROWS, SPECIMEN_ROWS } from '../reference/feedingRows';
import { guildAgreement, type Agreement } from '../reference/guildAgreement';
import type { BenchRow } from './scan';

const CONTENT = path.join(ROOT, 'content');
const percent = (share: number) => `${Math.round(share * 100)}`;
const place = ({ pierce, cut, crush }: Position) => [pierce, cut, crush].map(percent).join(' / ');
const named = (ranked: { id: string; probability: number }[]) =>
	ranked
		.slice(0, 2)
		.map(({ id, probability }) => `${id} ${percent(probability)} %`)
		.join(', ');
const SAYS: Readonly<Record<Agreement['agrees'], string>> = { yes: 'yes', second: 'second', no: '**no**' };

/**
 * How well the feeding guide agrees with published rows, and with itself: a table of every row with the guild expected and
 * those named, the exhibit's own teeth, and how far a form made for a place lands from it when it is measured.
 */
export async function benchFeeding(): Promise<{ rows: BenchRow[]; tables: string }> {
	const { draft } = await loadContent(fsReader(CONTENT));
	if (!draft?.feeding) throw new Error('benchFeeding: content/feeding cannot be used');
	const { feeding, specimens } = draft;
	const agreed = (rows: typeof ALL_ROWS) => guildAgreement(rows, feeding.thresholds, feeding.guilds);
	const all = agreed(ALL_ROWS);
	const counted = (rows: typeof ALL_ROWS) => {
		const found = agreed(rows);
		return `${found.filter(({ agrees }) => agrees === 'yes').length} of ${found.length}`;
	};
	const off = roundTrip(feeding);
	const rows: BenchRow[] = [
		{
			what: 'Feeding guide: likeliest guild is the expected one',
			measured: `${all.filter(({ agrees }) => agrees === 'yes').length} of ${all.length} rows`,
			goal: '',
			beside: `single crowns ${counted(SPECIMEN_ROWS)}, groups measured ${counted(CLADE_ROWS)}, groups in words ${counted(GROUP_ROWS)}`,
		},
		{
			what: 'Feeding guide: form made for a place, measured, placed again',
			measured: `${off.mean.toFixed(3)} of a side away in the mean`,
			goal: 'under 0.06',
			beside: `farthest of ${off.count}: ${off.most.toFixed(3)}`,
		},
	];
	return { rows, tables: `${agreementTable(all)}\n\n${await ownTable(specimens, feeding)}` };
}

function roundTrip({ thresholds }: Feeding): { mean: number; most: number; count: number } {
	const off: number[] = [];
	for (let i = 0; i <= 4; i++)
		for (let j = 0; j <= 4 - i; j++) {
			const from = asPosition(i, j, 4 - i - j);
			const made = sculpt(formAt(from, 30, thresholds));
			if (!made.ok) throw new Error(`roundTrip: ${made.problem.code}`);
			const measured = measureCrown(made.value.mesh);
			if (!measured.ok) throw new Error(`roundTrip: ${measured.problem.code}`);
			const { position } = placeTooth(evidenceOf(measured.value, thresholds), thresholds);
			off.push(distanceBetween(from, position));
		}
	return { mean: off.reduce((sum, d) => sum + d, 0) / off.length, most: Math.max(...off), count: off.length };
}

function agreementTable(rows: readonly Agreement[]): string {
	const head =
		'| tooth | expected | pierce / cut / crush, % | named first and second | agrees |\n|---|---|---|---|---|';
	const lines = rows.map(
		({ name, expected, position, ranked, agrees }) =>
			`| ${name} | ${expected.join(' or ')} | ${place(position)} | ${named(ranked)} | ${SAYS[agrees]} |`,
	);
	const others = rows
		.filter(({ agrees }) => agrees !== 'yes')
		.map(
			({ name, expected, ranked }) => `${name} (expected ${expected.join(' or ')}; named ${named(ranked)})`,
		);
	const told = others.length > 0 ? `Disagreements: ${others.join('; ')}.` : 'No disagreement.';
	return `${[head, ...lines].join('\n')}\n\n${told}`;
}

async function ownTable(specimens: readonly SpecimenDraft[], feeding: Feeding): Promise<string> {
	const head =
		'| tooth of the exhibit | pierce / cut / crush, % | region | named first and second |\n|---|---|---|---|';
	const lines: string[] = [];
	for (const specimen of specimens) {
		const { measures, declared } = await measured(specimen);
		const evidence = evidenceOf(measures, feeding.thresholds, declared, { part: specimen.part });
		const { position, uncertainty } = placeTooth(evidence, feeding.thresholds);
		const ranked = rankGuilds(evidence, feeding.guilds);
		lines.push(
			`| ${specimen.accession}, ${specimen.group} | ${place(position)} | ${uncertainty.toFixed(2)} | ${named(ranked)} |`,
		);
	}
	return [head, ...lines].join('\n');
}

async function measured({
	id,
	shape,
}: SpecimenDraft): Promise<{ measures: CrownMeasures; declared: DeclaredTraits }> {
	if (shape.kind === 'scan') {
		const file = path.join(CONTENT, 'specimens', id, shape.file);
		const { result } = await measureFile(file, shape.file, shape.units, false);
		if ('error' in result) throw new Error(`benchFeeding: ${id}: ${result.error.message}`);
		return { measures: result, declared: {} };
	}
	const made = sculpt(shape.form);
	if (!made.ok) throw new Error(`benchFeeding: ${id}: ${made.problem.code}`);
	const found = measureCrown(made.value.mesh, { marks: made.value.marks });
	if (!found.ok) throw new Error(`benchFeeding: ${id}: ${found.problem.code}`);
	return { measures: found.value, declared: formFacts(shape.form) };
}
