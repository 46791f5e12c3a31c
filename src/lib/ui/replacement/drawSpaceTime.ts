import { phaseColour } from './phasePaint';

export interface SpaceTimePicture {
	width: number;
	height: number;
	positions: number;
	/** what is shown begins here and lasts so long, days, top to bottom */
	from_d: number;
	length_d: number;
	/** phase at a position (0 = front) on a day, 0 .. 1 */
	phaseAt: (position: number, day: number) => number;
	/** every how many positions the eye follows; the others are dimmed */
	follow: number;
	/** how much later the next tooth of the series comes, days; null = no threads */
	lag_d: number | null;
	outline: string;
	thread: string;
}

/**
 * Positions from left (front) to right, time from top to bottom: each cell in its phase's colour, a line where a new
 * tooth erupts, threads along the series that is followed. All sizes in CSS px.
 */
export function drawSpaceTime(pen: CanvasRenderingContext2D, picture: SpaceTimePicture): void {
	const { width, height, positions, from_d, length_d, phaseAt, lag_d, follow } = picture;
	const pitch = width / positions;
	const rows = Math.max(1, Math.floor(height));
	const day = (row: number) => from_d + ((row + 0.5) / rows) * length_d;
	/** eruptions of followed positions: middle of the column, row */
	const erupted: [number, number][] = [];
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
				pen.fillRect(left, row - 1, wide, 2);
				if (followed) erupted.push([(n + 0.5) * pitch, row]);
			}
			last = phase;
		}
	}
	pen.globalAlpha = 1;
	if (lag_d === null) return;
	// threads join each eruption with the next of the series: what the eye takes for a wave
	pen.strokeStyle = picture.thread;
	pen.fillStyle = picture.thread;
	pen.lineWidth = 2.5;
	pen.beginPath();
	pen.rect(0, 0, width, height);
	pen.save();
	pen.clip();
	pen.beginPath();
	for (const [x, y] of erupted) {
		pen.moveTo(x, y);
		pen.lineTo(x + follow * pitch, y + (lag_d / length_d) * rows);
	}
	pen.stroke();
	pen.restore();
	for (const [x, y] of erupted) {
		pen.beginPath();
		pen.arc(x, y, Math.min(4, pitch * 0.2), 0, 2 * Math.PI);
		pen.fill();
	}
}
