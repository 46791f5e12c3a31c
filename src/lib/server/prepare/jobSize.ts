import { scanFormat, type ScanFormat } from '../scan/readScan';
import type { ShapeSource } from './shapeJob';

/**
 * Bytes of a triangle in a file of each kind, on the low side: binary STL has 50 exactly (its record); the others half
 * a corner and three numbers of corners (two triangles meet a corner on a closed surface), packed for GLB.
 */
const FILE_BYTES: Readonly<Record<ScanFormat, number>> = { stl: 50, ply: 19, obj: 30, glb: 8, gltf: 8 };
/** Memory to prepare anything at all, and for each triangle more; measured (test/bench/scan.ts), rounded up. */
const BASE_BYTES = 150e6;
const TRIANGLE_BYTES = 400;
/** Triangles of a model, about. */
const MODEL_TRIANGLES = 60_000;

/** How much work a shape will be, from the size of its file alone. */
export function jobSize(source: ShapeSource): { triangles: number; memory: number } {
	const triangles =
		source.kind === 'model'
			? MODEL_TRIANGLES
			: Math.ceil(source.bytes / FILE_BYTES[scanFormat(source.path) ?? 'stl']);
	return { triangles, memory: BASE_BYTES + triangles * TRIANGLE_BYTES };
}
