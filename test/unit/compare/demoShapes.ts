import path from 'node:path';
import { loadContent } from '../../../src/lib/content/loadContent';
import type { CrownMeasures } from '../../../src/lib/domain/measure/crownMeasures';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import type { TriMesh } from '../../../src/lib/domain/mesh/triMesh';
import { weld } from '../../../src/lib/domain/mesh/weld';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { fsReader } from '../../../src/lib/server/fsReader';

export interface DemoShape {
	id: string;
	mesh: TriMesh;
	measures: CrownMeasures;
}

/** The first teeth of the demo exhibit that are models, welded, in the tooth frame, with their measures. */
export async function demoShapes(count: number): Promise<DemoShape[]> {
	const { draft } = await loadContent(fsReader(path.resolve(__dirname, '../../../content')));
	if (!draft) throw new Error('demoShapes: the content folder cannot be read');
	const shapes: DemoShape[] = [];
	for (const { id, shape } of draft.specimens) {
		if (shapes.length === count) break;
		if (shape.kind !== 'model') continue;
		const sculpted = sculpt(shape.form);
		if (!sculpted.ok) throw new Error(`demoShapes: ${id}: ${sculpted.problem.code}`);
		const mesh = weld(sculpted.value.mesh);
		const measured = measureCrown(mesh, { marks: sculpted.value.marks, welded: true });
		if (!measured.ok) throw new Error(`demoShapes: ${id}: ${measured.problem.code}`);
		shapes.push({ id, mesh, measures: measured.value });
	}
	return shapes;
}
