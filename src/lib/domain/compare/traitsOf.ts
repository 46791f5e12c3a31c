import type { Side } from '../tooth/form';
import { crownSurface } from './crownSurface';
import { edgesOf, ridgesOf, sideAt } from './crownRelief';
import { TRAITS, type ComparedTooth, type Trait, type TraitId, type Traits, type Unknown } from './traits';

/** so many ridges or more are many; ours */
const MANY_RIDGES = 16;

/** What a part of a tooth that has no form says of its root. */
const ROOT_OF_PART: Readonly<Record<ComparedTooth['part'], string | null>> = {
	crown: 'none',
	'shed-crown': 'resorbed',
	'rooted-tooth': 'full',
	germ: 'open',
	'jaw-piece': null,
};

/**
 * Traits of one tooth as plain data. Numbers are measured on its mesh. Counts and kinds are those of the form that a model
 * was made from; of a scan they are measured, or read in what the curator wrote. What none of these says is unknown, with
 * the reason.
 */
export function traitsOf(tooth: ComparedTooth): Traits {
	const { measures, facts } = tooth;
	const { form } = facts;
	const edges = edgesOf(tooth);
	const ridges = ridgesOf(tooth);
	const measured = (id: TraitId, value: Trait['value'], why: Unknown = 'not-measurable'): Trait =>
		made(id, value, 'measured', why);
	const tipFlat = measures.warnings.some(({ code }) => code === 'tip-flat');
	const section = measures.sections.find(({ at }) => at === 0.5)?.shape ?? null;
	const traits: Record<TraitId, Trait> = {
		carinae: made('carinae', edges?.angles_deg.length ?? null, edges?.from ?? 'measured', 'not-measurable'),
		serrations: serrations(edges?.angles_deg.length ?? null, form?.serrationsPer5mm),
		section: form?.section
			? made('section', form.section, 'form', 'not-measurable')
			: measured('section', section),
		slenderness: measured('slenderness', measures.crownHeightRatio),
		edgeSide: edgeSide(tooth),
		ridges: {
			...made('ridges', ridges && amount(ridges.count), ridges?.from ?? 'measured', 'not-measurable'),
			...(ridges ? { count: ridges.count } : {}),
		},
		roundness: measured('roundness', measures.crownBaseRatio),
		curvature: measured(
			'curvature',
			measures.curvature_deg,
			measures.warnings.some(({ code }) => code === 'too-low-for-curvature') ? 'too-low' : 'not-measurable',
		),
		ridgeSide: made(
			'ridgeSide',
			ridges?.side ?? null,
			ridges?.from ?? 'measured',
			ridges?.count === 0 ? 'no-ridges' : 'not-measurable',
		),
		tip: measured(
			'tip',
			measures.tipRadius_mm === null ? null : measures.tipRadius_mm / measures.crownBaseWidth_mm,
			tipFlat ? 'worn-flat' : 'not-measurable',
		),
		root: root(tooth),
		size: measured('size', measures.crownHeight_mm),
		tipWorn:
			!tipFlat && measures.tipRadius_mm === null && form
				? made('tipWorn', form.tipWorn, 'form', 'not-measurable')
				: measured('tipWorn', tipFlat ? true : measures.tipRadius_mm === null ? null : false),
		wear: measured('wear', wear(tooth)),
	};
	return traits;
}

function made(id: TraitId, value: Trait['value'], from: Trait['from'], why: Unknown): Trait {
	const kind = TRAITS[id];
	return {
		id,
		kind: kind.kind,
		...(kind.kind === 'number' ? { unit: kind.unit } : {}),
		value,
		...(value === null ? { unknown: why } : {}),
		from,
	};
}

function serrations(edges: number | null, per5mm: number | undefined): Trait {
	if (edges === 0) return made('serrations', null, 'form', 'no-edges');
	return made('serrations', per5mm === undefined ? null : per5mm > 0, 'form', 'not-recorded');
}

function edgeSide(tooth: ComparedTooth): Trait {
	const edges = edgesOf(tooth);
	const from = edges?.from ?? 'measured';
	if (!edges) return made('edgeSide', null, from, 'not-measurable');
	if (edges.angles_deg.length === 0) return made('edgeSide', null, from, 'no-edges');
	if (tooth.facts.labial === null) return made('edgeSide', null, from, 'sides-not-known');
	const sides = new Set(edges.angles_deg.map(sideAt));
	const pair = (one: Side, other: Side): boolean => sides.size === 2 && sides.has(one) && sides.has(other);
	const value = pair('mesial', 'distal') ? 'along' : pair('labial', 'lingual') ? 'across' : null;
	return made('edgeSide', value, from, 'no-pair');
}

function amount(count: number): string {
	return count === 0 ? 'none' : count < MANY_RIDGES ? 'few' : 'many';
}

function root({ facts, part, features }: ComparedTooth): Trait {
	if (facts.form) return made('root', facts.form.root, 'form', 'not-recorded');
	const byPart = ROOT_OF_PART[part];
	const pit = byPart === null && features.some(({ kind }) => kind === 'pit');
	return made('root', pit ? 'resorbed' : byPart, 'record', 'in-the-jaw');
}

/** Share of the crown's outer surface that wear has cut flat, 0 .. 1; null where the mesh is too rough to tell. */
function wear({ measures, facts }: ComparedTooth): number | null {
	const whole = crownSurface(measures, facts);
	const regions = facts.regionAreas_mm2;
	const tooRough = !regions && measures.warnings.some(({ code }) => code === 'facets-under-noise');
	if (whole === null || tooRough) return null;
	const worn = regions ? regions.facet : measures.facets.reduce((sum, { area_mm2 }) => sum + area_mm2, 0);
	return Math.min(1, worn / whole);
}
