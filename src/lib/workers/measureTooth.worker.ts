/** Measures teeth away from the page, so that a drag does not wait for it. */
import { measureCrown } from '../domain/measure/measureCrown';
import type { CrownMarks, CrownMeasures } from '../domain/measure/crownMeasures';
import type { TriMesh } from '../domain/mesh/triMesh';

export interface MeasureAsk {
	id: number;
	mesh: TriMesh;
	marks: CrownMarks;
}
export interface MeasureAnswer {
	id: number;
	/** null when it could not be measured */
	measures: CrownMeasures | null;
}

self.addEventListener('message', ({ data }: MessageEvent<MeasureAsk>) => {
	const result = measureCrown(data.mesh, { marks: data.marks });
	const answer: MeasureAnswer = { id: data.id, measures: result.ok ? result.value : null };
	self.postMessage(answer);
});
