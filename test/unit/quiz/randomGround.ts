import {
	TRAIT_IDS,
	TRAITS,
	type Trait,
	type TraitId,
	type Traits,
} from '../../../src/lib/domain/compare/traits';
import type { ShowView } from '../../../src/lib/domain/compare/showIn';
import type { QuizGround } from '../../../src/lib/domain/quiz/buildRound';
import type { QuizTooth, TouchPart } from '../../../src/lib/domain/quiz/question';
import type { Random } from '../../../src/lib/domain/quiz/seeded';

const pick = <T>(items: readonly T[], random: Random): T => items[Math.floor(random() * items.length)];

const NUMBERS: Partial<Record<TraitId, (r: Random) => number>> = {
	size: (r) => 3 * 30 ** r(),
	slenderness: (r) => 0.5 * 8 ** r(),
	roundness: (r) => 0.35 + 0.8 * r(),
	curvature: (r) => 60 * r(),
	tip: (r) => 0.01 * 40 ** r(),
	wear: (r) => 0.2 * r() ** 2,
};
const KINDS: Partial<Record<TraitId, readonly (string | number | boolean)[]>> = {
	carinae: [0, 1, 2, 2, 3],
	serrations: [true, false],
	section: ['round', 'oval', 'blade', 'triangular', 'other'],
	edgeSide: ['along', 'across'],
	ridges: ['none', 'few', 'many'],
	ridgeSide: ['all', 'labial', 'lingual', 'one-side'],
	root: ['none', 'full', 'open', 'resorbed'],
	tipWorn: [true, false],
};

function randomTrait(id: TraitId, random: Random): Trait {
	const unknown = random() < 0.12;
	const kind = TRAITS[id].kind;
	const value = NUMBERS[id]?.(random) ?? pick(KINDS[id] ?? [0], random);
	return {
		id,
		kind,
		value: unknown ? null : value,
		...(unknown ? { unknown: 'not-measurable' as const } : {}),
		...(id === 'ridges' && !unknown ? { count: value === 'none' ? 0 : value === 'few' ? 8 : 24 } : {}),
		from: 'measured',
	};
}

export function randomTooth(id: string, random: Random): QuizTooth {
	const traits = Object.fromEntries(TRAIT_IDS.map((trait) => [trait, randomTrait(trait, random)])) as Traits;
	const shares = [random(), random(), random()].map((share) => share ** 3 + 0.01);
	const sum = shares[0] + shares[1] + shares[2];
	const parts: TouchPart[] = [];
	if (random() < 0.7) parts.push({ kind: 'tip', at: 1, where_deg: 90 });
	if (random() < 0.5)
		for (const where_deg of [0, 180]) parts.push({ kind: 'carina', at: 0.5, where_deg, from: 0.2, to: 0.9 });
	if (random() < 0.4) parts.push({ kind: 'pit', at: -0.25, where_deg: 270 });
	if (random() < 0.3) parts.push({ kind: 'facet', at: 0.8, where_deg: 270 });
	if (random() < 0.3) parts.push({ kind: 'root', at: -0.6, where_deg: 90 });
	if (random() < 0.3) parts.push({ kind: 'neck', at: -0.1, where_deg: 90 });
	return {
		id,
		group: pick(['a', 'b', 'c', 'd'], random),
		traits,
		views: Object.fromEntries(TRAIT_IDS.map((trait) => [trait, 'labial'])) as Record<TraitId, ShowView>,
		parts,
		feeding:
			random() < 0.2 ? null : { pierce: shares[0] / sum, cut: shares[1] / sum, crush: shares[2] / sum },
		jawPlace: random() < 0.5 ? null : pick(['front', 'middle', 'back'] as const, random),
		crownHeight_mm: Number(traits.size.value ?? 12),
	};
}

/** An exhibit of that many teeth, as random as the quiz has to bear. */
export function randomGround(teeth: number, random: Random): QuizGround {
	return {
		teeth: Array.from({ length: teeth }, (_, i) => randomTooth(`t${i}`, random)),
		preys: [
			{ id: 'squid', corner: 'pierce' },
			{ id: 'fish', corner: 'pierce' },
			{ id: 'flesh', corner: 'cut' },
			{ id: 'shell', corner: 'crush' },
		],
		claims: [
			{ id: 'bands', verdict: 'debated', bands: ['11-14'], topic: 'bands', tooth: null },
			{ id: 'many', verdict: 'holds', bands: ['5-7', '7-11', '11-14'], topic: 'replacement', tooth: null },
		],
		own: [],
		off: [],
	};
}
