import { bounds } from '../../domain/mesh/bounds';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { opposingMove, type BiteSetup } from '../../domain/replacement/bite';
import type { MeshShape } from '../../stage/api';

export interface WearMoment {
	standing: TriMesh;
	opposing: TriMesh;
	standingHeight_mm: number;
	opposingHeight_mm: number;
	setup: BiteSetup;
	/** 1 = open, 0 = shut */
	open: number;
}

/** Two teeth that meet as a shape for the stage: the lower stands, the upper hangs and slides. */
export function wearShape(moment: WearMoment): MeshShape {
	const { standing, opposing, standingHeight_mm, opposingHeight_mm, setup, open } = moment;
	const [x, y, z] = opposingMove(setup, open, standingHeight_mm, opposingHeight_mm);
	const lower = bounds(standing);
	const upper = bounds(opposing);
	const wide = Math.max(lower.max[0], upper.max[0], -lower.min[0], -upper.min[0]);
	return {
		parts: [
			{ id: 'standing', mesh: standing },
			{
				id: 'opposing',
				mesh: opposing,
				// turned half round the x axis, then moved
				place: [1, 0, 0, 0, 0, -1, 0, 0, 0, 0, -1, 0, x, y, z, 1],
				tint: { rgb: [58, 44, 34], share: 0.25 },
			},
		],
		preservation: 'living',
		// room for the widest opening and the farthest spacing, so that nothing jumps while a slider is dragged
		bounds: {
			min: [-wide, -standingHeight_mm * 0.35, -standingHeight_mm * 0.75],
			max: [wide, standingHeight_mm * 1.25 + opposingHeight_mm * 0.9, standingHeight_mm * 0.95],
		},
		crownHeight_mm: standingHeight_mm,
		noShadow: true,
	};
}
