export interface LinesPicture {
	width: number;
	height: number;
	/** distance of each line from the outside of the dentine, um, rising */
	lines_um: ArrayLike<number>;
	/** numbers of lines that stand out */
	strong: ReadonlySet<number>;
	/** stretch that is shown, um from the outside */
	from_um: number;
	to_um: number;
	/** lines that a visitor has counted */
	counted: ReadonlySet<number>;
	/** a place pointed at, um; null = none */
	ruler_um: number | null;
	/** where the dentine ends at the pulp, um */
	end_um: number;
	colours: { amber: string; felt: string; bone: string };
}

const DENTINE = '#d8c29a';
const LINE = 'rgb(96 66 30 / 0.62)';
const STRONG = 'rgb(84 50 18 / 0.95)';

/** How far a line is bent at the upper and lower edge of the picture, as a share of its height. */
const BEND = 0.06;

/** Dentine under the microscope: the outside on the left, the pulp on the right. Sizes in CSS px. */
export function drawLines(pen: CanvasRenderingContext2D, picture: LinesPicture): void {
	const { width, height, lines_um, strong, from_um, to_um, counted, ruler_um, end_um, colours } = picture;
	const pxPerUm = width / (to_um - from_um);
	const x = (um: number) => (um - from_um) * pxPerUm;
	const bend = height * BEND;
	pen.clearRect(0, 0, width, height);
	pen.fillStyle = DENTINE;
	pen.fillRect(0, 0, width, height);
	const spacing = pxPerUm * (end_um / Math.max(1, lines_um.length));
	const trace = (at: number) => {
		pen.beginPath();
		pen.moveTo(at - bend, 0);
		pen.quadraticCurveTo(at + bend, height / 2, at - bend, height);
	};
	// tubules run across the lines
	if (spacing > 8) {
		pen.strokeStyle = 'rgb(96 66 30 / 0.12)';
		pen.lineWidth = 1;
		for (let y = 7; y < height; y += 9) {
			pen.beginPath();
			pen.moveTo(0, y);
			pen.lineTo(width, y + 3);
			pen.stroke();
		}
	}
	for (let i = 0; i < lines_um.length; i += 1) {
		const at = x(lines_um[i]);
		if (at < -bend || at > width + bend) continue;
		const isCounted = counted.has(i);
		pen.strokeStyle = isCounted ? '#8a3a12' : strong.has(i) ? STRONG : LINE;
		pen.lineWidth = isCounted
			? Math.max(2, spacing * 0.16)
			: Math.max(strong.has(i) ? 1.1 : 0.55, Math.min(3, spacing * 0.1));
		trace(at);
		pen.stroke();
		if (!isCounted || spacing < 8) continue;
		pen.fillStyle = colours.felt;
		pen.beginPath();
		pen.arc(at + bend * 0.2, height / 2, Math.min(9, spacing * 0.28), 0, 2 * Math.PI);
		pen.fill();
		pen.fillStyle = colours.amber;
		pen.beginPath();
		pen.arc(at + bend * 0.2, height / 2, Math.min(6, spacing * 0.19), 0, 2 * Math.PI);
		pen.fill();
	}
	if (x(end_um) < width) {
		pen.fillStyle = '#7c3328';
		pen.beginPath();
		pen.moveTo(x(end_um) - bend, 0);
		pen.quadraticCurveTo(x(end_um) + bend, height / 2, x(end_um) - bend, height);
		pen.lineTo(width, height);
		pen.lineTo(width, 0);
		pen.fill();
	}
	if (ruler_um === null) return;
	pen.strokeStyle = colours.felt;
	pen.lineWidth = 5;
	pen.beginPath();
	pen.moveTo(x(ruler_um), 0);
	pen.lineTo(x(ruler_um), height);
	pen.stroke();
	pen.strokeStyle = colours.amber;
	pen.lineWidth = 2.5;
	pen.stroke();
}
