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

/** Half the width of a tip that is worn flat, mm, by the straight line through the topmost two sections; 0 of any other. */
function flatTop_mm({ sections, warnings }: CrownMeasures): number {
	const [low, high] = sections.slice(-2);
	if (!high || !warnings.some(({ code }) => code === 'tip-flat')) return 0;
	const size = ({ length_mm, width_mm }: typeof low): number => Math.sqrt(length_mm * width_mm);
	const narrowing = (size(low) - size(high)) / (high.at - low.at);
	return Math.max(0, size(high) - narrowing * (1 - high.at)) / 2;
}

/** A biter from a crown's measures and evidence. Angles are those of the straight cone from base to tip. A tip worn
 * flat is taken as round as the flat is wide. */
export function biterOf(measures: CrownMeasures, evidence: Pick<Evidence, 'edges'>): Biter {
	const { crownBaseLength_mm: length, crownBaseWidth_mm: width, axialHeight_mm: height } = measures;
	const notes: ValidityNote[] = [];
	const mean_mm = Math.sqrt(length * width) / 2;
	const tipRadius_mm = measures.tipRadius_mm ?? Math.max(ASSUMED_TIP * mean_mm, flatTop_mm(measures));
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
