export interface HeapAssumptions {
	/** part of a heap that is tooth and not air: 0.5 loose .. 0.64 shaken down (spheres); our assumption for teeth */
	packing: number;
	/** slope of the heap's side, degrees; our assumption */
	slope_deg: number;
}

export const HEAP_ASSUMPTIONS: HeapAssumptions = { packing: 0.55, slope_deg: 30 };

export interface Heap {
	/** teeth and the air between them, cm3 */
	volume_cm3: number;
	/** of a cone of that volume, cm */
	height_cm: number;
	width_cm: number;
}

/** A heap of teeth as a cone. `tooth_mm3` is the volume of one tooth. */
export function heapSize(
	teeth: number,
	tooth_mm3: number,
	{ packing, slope_deg }: HeapAssumptions = HEAP_ASSUMPTIONS,
): Heap {
	const volume_cm3 = (teeth * tooth_mm3) / packing / 1000;
	const slope = Math.tan((slope_deg * Math.PI) / 180);
	// cone: V = pi r^2 h / 3 with h = r * slope
	const radius = Math.cbrt((3 * volume_cm3) / (Math.PI * slope));
	return { volume_cm3, height_cm: radius * slope, width_cm: 2 * radius };
}
