import type { ShapeStage } from './prepare/shapeJob';

/** How far the preparing of shapes has come; plain data for pages and for /healthz. */
export interface PreparingState {
	/** counts since there was last nothing to do */
	done: number;
	total: number;
	/** what is being worked on now */
	current: {
		/** id of the specimen, or of the first of those with this shape */
		specimen: string;
		stage: ShapeStage;
		/** 0 to 1, by the usual share of each stage */
		fraction: number;
	}[];
	/** seconds until all is done, by how long earlier shapes took; null while none has been timed */
	remaining_s: number | null;
}

/** Usual share of the time that has gone by when a stage begins (measured: test/bench/scan.ts). */
export const STAGE_BEGINS: Readonly<Record<ShapeStage, number>> = {
	reading: 0,
	measuring: 0.05,
	simplifying: 0.2,
	baking: 0.45,
	writing: 0.6,
};
