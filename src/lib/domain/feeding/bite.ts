import { bendingStress, type BendingStress } from './bendingStress';
import type { Biter } from './biter';
import { breakingForce, safetyFactor, type Breaking } from './breakingForce';
import { contactModulus_GPa, hertzContact, type Elastic, type HertzContact } from './hertzContact';
import type { ValidityNote } from './note';
import type { PreyBody } from './prey';
import { punctureForce_N } from './punctureForce';
import { shellCrackForce } from './shellCrackForce';

/** What the crown is made of. */
export interface CrownMaterial {
	strength_MPa: number;
	enamel: Elastic;
	/** some value of it is only recalled */
	recalled: boolean;
}

export interface BiteOptions {
	crown: CrownMaterial;
	/** share of the round tip's force that two strong edges need where edges help */
	edgedShare: number;
	/** between the force and the crown's axis */
	sidePull_deg: number;
}

export interface BitePoint {
	depth_mm: number;
	/** force held against the tooth at this depth */
	force_N: number;
	/** layer that the tip is in, from 0; the number of layers once it is through all */
	layer: number;
}

export interface LayerBite {
	/** id of the material */
	material: string;
	from_mm: number;
	to_mm: number;
	/** greatest force while the tip was in this layer; 0 when it was not reached */
	most_N: number;
	how: 'pierced' | 'cracked' | 'entered' | 'not-reached';
}

export interface Bite {
	/** force against depth, from the surface to `goal_mm` */
	curve: BitePoint[];
	/** depth that counts as a bite: through all layers, or as far as the crown reaches */
	goal_mm: number;
	/** greatest force on the way there */
	needed_N: number;
	layers: LayerBite[];
	/** where the crown comes nearest to snapping: depth and force there */
	worst: { depth_mm: number; force_N: number };
	/** in the crown at the worst point */
	stress: BendingStress;
	/** what would snap it there */
	breaking: Breaking;
	/** breaking force over the force there; below 1 the crown snaps before it is in */
	safety: number;
	/** depth at which the crown would snap; null when it holds */
	snapsAt_mm: number | null;
	/** elastic contact with the hardest layer at the greatest force in it; null without a hard layer that is reached */
	contact: (HertzContact & { material: string }) | null;
	notes: ValidityNote[];
}

const STEPS = 120;
/** Steps along the crown while the worst depth is looked for. */
const COARSE = 40;
/** Where prey pushes a tooth that is in: half-way between its tip and the surface; ours. */
export const HELD = 0.5;

/**
 * A bite: a tooth pressed into prey as far as it goes. Force against depth is strength times contact area, layer by layer;
 * a hard layer gives way by being pierced or by cracking as a plate, whichever needs less. Stress and snapping: the crown
 * as a beam under the force at each depth, `sidePull_deg` off its axis, acting half-way down to the surface. Teaching model throughout; notes say where it ends.
 */
export function bite(tooth: Biter, prey: PreyBody, options: BiteOptions): Bite {
	const { layers } = prey;
	const { crown, edgedShare } = options;
	const whole_mm = layers.reduce((sum, { thickness_mm }) => sum + thickness_mm, 0);
	const goal_mm = Math.min(whole_mm, tooth.crownHeight_mm);
	const notes: ValidityNote[] = [...tooth.notes, { code: 'mammal-strength' }, { code: 'teaching-model' }];
	if (whole_mm > tooth.crownHeight_mm)
		notes.push({ code: 'deeper-than-crown', limit: tooth.crownHeight_mm, found: whole_mm });

	const tops_mm = layers.map((_, i) => layers.slice(0, i).reduce((sum, l) => sum + l.thickness_mm, 0));
	const crack_N = shellCracksAt_N(tooth, prey, crown.enamel);
	const ofShell = layers.map(({ material }) => material.gives === 'cracks' && Number.isFinite(crack_N));
	const most_N = layers.map(() => 0);
	const cracked = new Set<number>();
	const curve: BitePoint[] = [];
	for (const depth_mm of depths(goal_mm, tops_mm)) {
		const after = tops_mm.findIndex((top) => top > depth_mm);
		const layer = depth_mm >= whole_mm ? layers.length : (after < 0 ? layers.length : after) - 1;
		let force_N = punctureForce_N(tooth.indenter, layers, depth_mm, edgedShare, cracked);
		const at = Math.min(layer, layers.length - 1);
		if (force_N > crack_N && ofShell[at] && !cracked.has(at)) {
			most_N[at] = Math.max(most_N[at], crack_N);
			curve.push({ depth_mm, force_N: crack_N, layer });
			ofShell.forEach((is, i) => is && cracked.add(i));
			force_N = punctureForce_N(tooth.indenter, layers, depth_mm, edgedShare, cracked);
		}
		most_N[at] = Math.max(most_N[at], force_N);
		curve.push({ depth_mm, force_N, layer });
	}
	const needed_N = Math.max(0, ...curve.map(({ force_N }) => force_N));
	const reached = layers.map((_, i) => tops_mm[i] < goal_mm);
	for (const [i, { material }] of layers.entries()) {
		if (!reached[i]) continue;
		if (material.recalled) notes.push({ code: 'recalled', about: material.id });
		if (material.standIn) notes.push({ code: 'stand-in', about: material.id });
		if (material.edges === 'not-tested' && tooth.indenter.edges > 0.2)
			notes.push({ code: 'edges-not-tested', about: material.id });
	}
	const loadAt = (depth_mm: number) => ({
		angle_deg: options.sidePull_deg,
		plane: tooth.weakPlane,
		at_mm: depth_mm * HELD,
	});
	const safeties = curve.map(({ depth_mm, force_N }) =>
		safetyFactor(breakingForce(tooth.beam, loadAt(depth_mm), crown.strength_MPa, COARSE).force_N, force_N),
	);
	const worst = curve[safeties.indexOf(Math.min(...safeties))];
	const load = loadAt(worst.depth_mm);
	const breaking = breakingForce(tooth.beam, load, crown.strength_MPa);
	const stress = bendingStress(tooth.beam, { ...load, force_N: worst.force_N });
	notes.push(...stress.notes);
	const snaps = curve.find((_, i) => safeties[i] < 1);
	const contact = hardContact(tooth, prey, most_N, crown.enamel);
	// the enamel's stiffness counts where something hard is met
	if (crown.recalled && (contact || Number.isFinite(crack_N)))
		notes.push({ code: 'recalled', about: 'crown' });
	notes.push(...(contact?.notes.map((note) => ({ ...note, about: contact.material })) ?? []));
	return {
		curve,
		goal_mm,
		needed_N,
		layers: layers.map(({ material, thickness_mm }, i) => ({
			material: material.id,
			from_mm: tops_mm[i],
			to_mm: tops_mm[i] + thickness_mm,
			most_N: most_N[i],
			how: !reached[i]
				? 'not-reached'
				: cracked.has(i)
					? 'cracked'
					: goal_mm >= tops_mm[i] + thickness_mm - 1e-9
						? 'pierced'
						: 'entered',
		})),
		stress,
		breaking,
		worst: { depth_mm: worst.depth_mm, force_N: worst.force_N },
		safety: safetyFactor(breaking.force_N, worst.force_N),
		snapsAt_mm: snaps?.depth_mm ?? null,
		contact,
		notes: unique(notes),
	};
}

/** Depths from 0 to the goal, denser near each layer's top, with both sides of every face. */
function depths(goal_mm: number, tops_mm: readonly number[]): number[] {
	const even = Array.from({ length: STEPS + 1 }, (_, i) => (goal_mm * i) / STEPS);
	const faces = tops_mm.slice(1).flatMap((top) => [top * (1 - 1e-9), top]);
	const fine = tops_mm.flatMap((top, i) => {
		const thick = (tops_mm[i + 1] ?? goal_mm) - top;
		return Array.from({ length: 12 }, (_, k) => top + (thick * (k + 1)) / 13);
	});
	return [...new Set([...even, ...faces, ...fine].filter((d) => d < goal_mm)), goal_mm].sort((a, b) => a - b);
}

/** Force that cracks the whole shell, N; Infinity where there is none. */
function shellCracksAt_N(tooth: Biter, { layers, shell }: PreyBody, enamel: Elastic): number {
	const parts = layers.filter(({ material }) => material.gives === 'cracks');
	if (!shell || parts.length === 0) return Infinity;
	const elastic = parts[0].material.elastic ?? enamel;
	const thickness_mm = parts.reduce((sum, part) => sum + part.thickness_mm, 0);
	const plate = { ...shell, thickness_mm, nu: elastic.nu };
	return shellCrackForce(tooth.face, plate, contactModulus_GPa(enamel, elastic)).force_N;
}

function hardContact(
	tooth: Biter,
	prey: PreyBody,
	most_N: readonly number[],
	enamel: Elastic,
): Bite['contact'] {
	const hard = prey.layers
		.map(({ material }, i) => ({ material, force_N: most_N[i] }))
		.filter(({ material, force_N }) => material.elastic && force_N > 0)
		.sort((a, b) => b.force_N - a.force_N)[0];
	if (!hard?.material.elastic) return null;
	const modulus_GPa = contactModulus_GPa(enamel, hard.material.elastic);
	const yields_MPa = hard.material.basis === 'hardness' ? hard.material.resists_MPa : undefined;
	const contact = hertzContact(
		hard.force_N,
		tooth.indenter.tipRadius_mm,
		modulus_GPa,
		hard.material.elastic.nu,
		yields_MPa,
	);
	return { ...contact, material: hard.material.id };
}

function unique(notes: readonly ValidityNote[]): ValidityNote[] {
	const seen = new Map(notes.map((note) => [`${note.code}/${note.about ?? ''}`, note]));
	return [...seen.values()];
}
