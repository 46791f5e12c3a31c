import type { Vec3 } from '../vec3';

/** Axes of one parallel view of a tooth in its tooth frame; unit vectors, right x up = towards. */
export interface DrawingAxes {
	right: Vec3;
	up: Vec3;
	/** from the tooth to the viewer */
	towards: Vec3;
}

export const DRAWN_VIEWS = ['side', 'front', 'tip'] as const;
export type DrawnViewName = (typeof DRAWN_VIEWS)[number];

/**
 * The three views of a measured drawing: `side` looks at the labial face, `front` at the mesial edge, `tip` down from
 * the tip with the labial face downwards. They match as on a drawing board: what is seen from the left stands to the
 * right, what is seen from above stands below (first-angle projection, ISO 128). On a tooth of the other side of
 * the jaw the labial face looks along -z; side and tip view are then turned by half a turn.
 */
export function drawingAxes(labial: '+z' | '-z' = '+z'): Record<DrawnViewName, DrawingAxes> {
	const s = labial === '+z' ? 1 : -1;
	return {
		side: { right: [s, 0, 0], up: [0, 1, 0], towards: [0, 0, s] },
		front: { right: [0, 0, 1], up: [0, 1, 0], towards: [-1, 0, 0] },
		tip: { right: [s, 0, 0], up: [0, 0, -s], towards: [0, 1, 0] },
	};
}
