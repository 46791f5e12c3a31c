import type { PreparedShape, Preservation } from '../../content/exhibit';
import type { MeasureProblem } from '../../domain/measure/crownMeasures';
import type { FormProblem, ToothForm } from '../../domain/tooth/form';
import type { ScanProblem, ScanUnits } from '../scan/readScan';

/** What a shape is made from. */
export type ShapeSource =
	| { kind: 'model'; form: ToothForm }
	/** `path` is where the file stands on disk, `bytesHash` what its bytes hashed to when the job was made */
	| { kind: 'scan'; path: string; bytesHash: string; units: ScanUnits };

/** One shape to work out; plain data, so that it can be handed to another thread. */
export interface ShapeJob {
	hash: string;
	dataDir: string;
	source: ShapeSource;
	/** tray pictures wanted */
	preservations: Preservation[];
}

/** Why a shape could not be made. */
export type ShapeFailure =
	| { of: 'form'; problem: FormProblem }
	| { of: 'scan'; problem: ScanProblem }
	| { of: 'measure'; problem: MeasureProblem }
	/** the file changed or vanished while it was being read; a later job will take it up */
	| { of: 'changed' }
	/** a fault of ours */
	| { of: 'crash'; message: string };

export type ShapeOutcome = { ok: true; prepared: PreparedShape } | { ok: false; failure: ShapeFailure };
