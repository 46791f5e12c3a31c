import type { TriMesh } from '../../../domain/mesh/triMesh';

/** Light from the upper left, in front; [across, up, near]. */
const LAMP = [-0.45, 0.62, 0.64] as const;
const DARK = [58, 46, 34];
const LIGHT = [240, 226, 200];

/**
 * Draws a tooth as seen from the side of the lip, and from behind, side by side, standing on one line and to one scale.
 * Gives that scale: CSS px per mm. Far triangles are drawn first; the picture needs no 3D.
 */
export function drawTooth(canvas: HTMLCanvasElement, { positions, indices }: TriMesh): number {
	const ratio = Math.min(2, window.devicePixelRatio || 1);
	const [width, height] = [canvas.clientWidth, canvas.clientHeight];
	canvas.width = width * ratio;
	canvas.height = height * ratio;
	const pen = canvas.getContext('2d');
	const low = [Infinity, Infinity, Infinity];
	const high = [-Infinity, -Infinity, -Infinity];
	for (let i = 0; i < positions.length; i++) {
		low[i % 3] = Math.min(low[i % 3], positions[i]);
		high[i % 3] = Math.max(high[i % 3], positions[i]);
	}
	const [dx, dy, dz] = [0, 1, 2].map((axis) => high[axis] - low[axis]);
	const gap = 0.15 * dy;
	const scale = 0.92 * Math.min(width / (dx + dz + gap), height / dy);
	if (!pen) return scale;
	pen.scale(ratio, ratio);
	pen.lineWidth = 0.7;
	const start = (width - scale * (dx + dz + gap)) / 2;
	const top = (height - scale * dy) / 2;
	// [axis across, sign across, axis towards the eye, sign, px]
	view(0, 1, 2, 1, start - scale * low[0]);
	view(2, -1, 0, 1, start + scale * (dx + gap + high[2]));
	return scale;

	function view(across: 0 | 2, sign: 1 | -1, near: 0 | 2, nearSign: 1 | -1, origin: number): void {
		const depth = (t: number): number =>
			nearSign *
			(positions[indices[t] * 3 + near] +
				positions[indices[t + 1] * 3 + near] +
				positions[indices[t + 2] * 3 + near]);
		const order: number[] = [];
		for (let t = 0; t < indices.length; t += 3) order.push(t);
		order.sort((a, b) => depth(a) - depth(b));
		const at = (k: number): [number, number, number] => {
			const v = indices[k] * 3;
			return [sign * positions[v + across], positions[v + 1], nearSign * positions[v + near]];
		};
		for (const t of order) {
			const [a, b, c] = [at(t), at(t + 1), at(t + 2)];
			const u = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
			const w = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
			const n = [u[1] * w[2] - u[2] * w[1], u[2] * w[0] - u[0] * w[2], u[0] * w[1] - u[1] * w[0]];
			const long = Math.hypot(...n) || 1;
			if (n[2] <= 0) continue;
			const lit = Math.max(0, (n[0] * LAMP[0] + n[1] * LAMP[1] + n[2] * LAMP[2]) / long);
			const colour = DARK.map((dark, i) => Math.round(dark + (LIGHT[i] - dark) * lit));
			pen!.fillStyle = pen!.strokeStyle = `rgb(${colour.join(' ')})`;
			pen!.beginPath();
			for (const [i, [x, y]] of [a, b, c].entries())
				pen![i === 0 ? 'moveTo' : 'lineTo'](origin + x * scale, top + (high[1] - y) * scale);
			pen!.closePath();
			pen!.fill();
			pen!.stroke();
		}
	}
}
