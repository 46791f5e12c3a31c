import type { PreparedShape, Preservation, ProvisionalShape } from '../../content/exhibit';
import type { CrownMarks, MeasureProblem } from '../../domain/measure/crownMeasures';
import type { FormProblem, ToothForm } from '../../domain/tooth/form';
import type { ScanProblem } from '../scan/scanProblem';
import type { ScanUnits } from '../scan/readScan';

/** What a shape is made from. */
export type ShapeSource =
	| { kind: 'model'; form: ToothForm }
	| {
			kind: 'scan';
			/** where the file stands on disk */
			path: string;
			/** what its bytes hashed to, and how many they were, when the job was made */
			bytesHash: string;
			bytes: number;
			units: ScanUnits;
			/** points of the crown in the file's own frame, mm */
			crown?: CrownMarks;
			/** shown in the colour of its preservation, whatever colours the file has */
			plain?: boolean;
	  };

/** One shape to work out; plain data, so that it can be handed to another thread. */
export interface ShapeJob {
	hash: string;
	dataDir: string;
	source: ShapeSource;
	/** id of the specimen that it is for, or of the first of several; for telling how far it has come */
	specimen?: string;
	/** tray pictures wanted */
	preservations: Preservation[];
}

export const SHAPE_STAGES = ['reading', 'measuring', 'simplifying', 'baking', 'writing'] as const;
export type ShapeStage = (typeof SHAPE_STAGES)[number];

/** Told whenever a job enters another stage. */
export type ReportStage = (stage: ShapeStage) => void;

/** Why a shape could not be made. */
export type ShapeFailure =
	| { of: 'form'; problem: FormProblem }
	| { of: 'scan'; problem: ScanProblem }
	/** `provisional`: of a scan that needs marks on its crown */
	| { of: 'measure'; problem: MeasureProblem; provisional?: ProvisionalShape }
	/** the file changed or vanished while it was being read; a later job will take it up */
	| { of: 'changed' }
	/** a fault of ours */
	| { of: 'crash'; message: string };

export type ShapeOutcome = { ok: true; prepared: PreparedShape } | { ok: false; failure: ShapeFailure };
