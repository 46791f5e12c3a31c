import type { CrownMarks, CrownMeasures, MeasureProblem } from '../../domain/measure/crownMeasures';
import { measureCrown } from '../../domain/measure/measureCrown';
import type { TriMesh } from '../../domain/mesh/triMesh';
import { weld } from '../../domain/mesh/weld';
import { ok, type Result } from '../../domain/result';
import { vec3, type Vec3 } from '../../domain/vec3';
import { plausibleTooth } from '../scan/plausibleTooth';
import type { Scan } from '../scan/readScan';

export interface MeasuredScan {
	/** welded, mm */
	mesh: TriMesh;
	/** with the warnings of reading and of looking at the whole before those of measuring */
	measures: CrownMeasures;
	/** the marks in the frame of this mesh */
	marks?: CrownMarks;
}

/** Welds and measures a scan; `crown` are its marks in the file's own frame, mm. */
export function measureScan(
	{ mesh: found, origin_mm, warnings }: Scan,
	crown: CrownMarks | undefined,
): Result<MeasuredScan, MeasureProblem> {
	const mesh = weld(found);
	const marks = crown && movedBy(crown, origin_mm);
	const measured = measureCrown(mesh, { welded: true, ...(marks ? { marks } : {}) });
	if (!measured.ok) return measured;
	const own = measured.value.warnings;
	const before: CrownMeasures['warnings'] = warnings.filter(
		({ code }) => !own.some((warning) => warning.code === code),
	);
	const doubt = marks ? null : plausibleTooth(mesh);
	if (doubt) before.unshift({ code: 'not-one-tooth', ...doubt });
	return ok({
		mesh,
		measures: { ...measured.value, warnings: [...before, ...own] },
		...(marks ? { marks } : {}),
	});
}

function movedBy({ apex, baseMesial, baseDistal, labial }: CrownMarks, origin: Vec3): CrownMarks {
	return {
		apex: vec3.subtract(apex, origin),
		baseMesial: vec3.subtract(baseMesial, origin),
		baseDistal: vec3.subtract(baseDistal, origin),
		...(labial ? { labial } : {}),
	};
}
