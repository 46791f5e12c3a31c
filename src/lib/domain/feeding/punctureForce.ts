import { contactArea_mm2, type Indenter } from './contactArea';
import type { FoodMaterial, PreyLayer } from './prey';

/**
 * What edges take off the force: 1 = nothing. Edged (triangular) tips need less force than round ones in skin-like materials,
 * and no less in others (Freeman & Lemen 2006, J. Zool. 269: 51-56; how much less was not to be read). `edgedShare` is the
 * share of the round tip's force that two strong edges still need: ours.
 */
export function edgeFactor(material: FoodMaterial, edges: number, edgedShare: number): number {
	const sharp = Math.min(1, Math.max(0, edges));
	return material.edges === 'help' ? 1 - sharp * (1 - edgedShare) : 1;
}

/**
 * Force that layers hold against a tip pushed in to a depth, N: the strength of each times the contact area that lies in it
 * (teaching model). A layer that cracks stops resisting when the tip is through it or when `cracked` names it.
 * `depth_mm` runs from the outer face; layers lie flat and do not bend away.
 */
export function punctureForce_N(
	indenter: Indenter,
	layers: readonly PreyLayer[],
	depth_mm: number,
	edgedShare: number,
	cracked: ReadonlySet<number> = new Set(),
): number {
	let top_mm = 0;
	let force_N = 0;
	for (const [i, { material, thickness_mm }] of layers.entries()) {
		const into_mm = depth_mm - top_mm;
		if (into_mm <= 0) break;
		const through_mm = into_mm - thickness_mm;
		top_mm += thickness_mm;
		const broken = material.gives === 'cracks' && (through_mm >= 0 || cracked.has(i));
		if (broken) continue;
		const area_mm2 = contactArea_mm2(indenter, into_mm) - contactArea_mm2(indenter, Math.max(0, through_mm));
		force_N += material.resists_MPa * edgeFactor(material, indenter.edges, edgedShare) * area_mm2;
	}
	return force_N;
}
