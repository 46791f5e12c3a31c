import path from 'node:path';
import { loadContent } from '../../../src/lib/content/loadContent';
import { formFacts } from '../../../src/lib/domain/compare/formFacts';
import { regionAreas } from '../../../src/lib/domain/compare/regionAreas';
import type { ComparedTooth } from '../../../src/lib/domain/compare/traits';
import { measureCrown } from '../../../src/lib/domain/measure/measureCrown';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { fsReader } from '../../../src/lib/server/fsReader';

/** The teeth of the demo exhibit that are models, from its content folder, sculpted and measured. */
export async function demoTeeth(): Promise<ComparedTooth[]> {
	const { draft } = await loadContent(fsReader(path.resolve(__dirname, '../../../content')));
	if (!draft) throw new Error('demoTeeth: the content folder cannot be read');
	return draft.specimens.flatMap(({ id, group, part, shape, features }): ComparedTooth[] => {
		if (shape.kind !== 'model') return [];
		const sculpted = sculpt(shape.form);
		if (!sculpted.ok) throw new Error(`demoTeeth: ${id}: ${sculpted.problem.code}`);
		const { mesh, marks } = sculpted.value;
		const measured = measureCrown(mesh, { marks });
		if (!measured.ok) throw new Error(`demoTeeth: ${id}: ${measured.problem.code}`);
		return [
			{
				id,
				group: { id: group },
				part,
				measures: measured.value,
				facts: { labial: '+z', regionAreas_mm2: regionAreas(mesh), form: formFacts(shape.form) },
				features,
			},
		];
	});
}
