import { phaseColour } from './phasePaint';

export interface SpaceTimePicture {
	width: number;
	height: number;
	positions: number;
	/** length of the run, days, top to bottom */
	length_d: number;
	/** phase at a position (0 = front) on a day, 0 .. 1 */
	phaseAt: (position: number, day: number) => number;
	/** every how many positions the eye follows; the others are dimmed */
	follow: number;
	outline: string;
}

/**
 * Positions from left (front) to right, time from top to bottom: each cell in its phase's colour, a line where a new
 * tooth erupts. All sizes in CSS px.
 */
export function drawSpaceTime(pen: CanvasRenderingContext2D, picture: SpaceTimePicture): void {
	const { width, height, positions, length_d, phaseAt, follow } = picture;
	const pitch = width / positions;
	const rows = Math.max(1, Math.floor(height));
	const day = (row: number) => ((row + 0.5) / rows) * length_d;
	pen.clearRect(0, 0, width, height);
	for (let n = 0; n < positions; n += 1) {
		const followed = n % follow === 0;
		const left = n * pitch + pitch * 0.06;
		const wide = pitch * 0.88;
		pen.globalAlpha = followed ? 1 : 0.28;
		let last = phaseAt(n, day(0));
		let since = 0;
		let colour = phaseColour(last);
		for (let row = 1; row <= rows; row += 1) {
			const phase = row < rows ? phaseAt(n, day(row)) : 2;
			const erupts = phase < last - 0.3;
			const next = row < rows ? phaseColour(phase) : '';
			if (next !== colour || erupts) {
				pen.fillStyle = colour;
				pen.fillRect(left, since, wide, row - since);
				since = row;
				colour = next;
			}
			if (erupts) {
				pen.fillStyle = picture.outline;
				pen.fillRect(left, row - 1, wide, 1.5);
			}
			last = phase;
		}
	}
	pen.globalAlpha = 1;
}
