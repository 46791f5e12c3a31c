import type { CrownMeasures } from '../measure/crownMeasures';
import { indenterTop, type Indenter } from './contactArea';
import { beamOf, type CrownBeam } from './crownBeam';
import type { Evidence } from './evidence';
import type { ValidityNote } from './note';
import type { CrushFace } from './shellCrackForce';

/** A tooth ready to bite: all that `bite` asks of it. */
export interface Biter {
	crownHeight_mm: number;
	indenter: Indenter;
	beam: CrownBeam;
	face: CrushFace;
	/** bending across its thinner side */
	weakPlane: 'MD' | 'LL';
	notes: ValidityNote[];
}

/** tip radius over the base's mean radius that is assumed where none was measured: the middle between sharp and blunt */
const ASSUMED_TIP = 0.18;

/** A biter from a crown's measures and evidence. Angles are those of the straight cone from base to tip. */
export function biterOf(measures: CrownMeasures, evidence: Pick<Evidence, 'edges'>): Biter {
	const { crownBaseLength_mm: length, crownBaseWidth_mm: width, axialHeight_mm: height } = measures;
	const notes: ValidityNote[] = [];
	const mean_mm = Math.sqrt(length * width) / 2;
	const tipRadius_mm = measures.tipRadius_mm ?? ASSUMED_TIP * mean_mm;
	if (measures.tipRadius_mm === null) notes.push({ code: 'tip-not-told', found: tipRadius_mm });
	const indenter = indenterTop({
		tipRadius_mm,
		height_mm: height,
		baseLength_mm: length,
		baseWidth_mm: width,
		edges: Math.min(1, evidence.edges.value ?? 0),
	});
	return {
		crownHeight_mm: height,
		indenter,
		beam: beamOf(measures, tipRadius_mm),
		face: { radius_mm: tipRadius_mm, halfWidth_mm: mean_mm },
		weakPlane: width < length ? 'LL' : 'MD',
		notes,
	};
}
