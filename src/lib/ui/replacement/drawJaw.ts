import { phaseColour, phasePattern, phaseThird } from './phasePaint';
import { MOST_WORN, toothStage } from './toothStage';

export interface JawPicture {
	width: number;
	height: number;
	/** phase of each position from the front, 0 .. 1 */
	phases: readonly number[];
	/** every how many positions the eye follows; the others are dimmed */
	follow: number;
	colours: { bone: string; gum: string; seam: string; chalk: string; felt: string };
	font: string;
}

/** From this height on there is room for bars below the teeth. */
const ROOMY_PX = 250;

/** How far a loose crown leans, radians. */
const LEAN = 0.16;

/** A crown that points down, in a box 1 wide and 1 high, its gum line on top; it leans to the back. */
function crownPath(width: number, height: number, worn: number): Path2D {
	const path = new Path2D();
	const half = width / 2;
	const tip = width * 0.16;
	path.moveTo(-half, 0);
	path.bezierCurveTo(-half, height * 0.45, tip - half * 0.5, height * 0.85, tip, height);
	path.bezierCurveTo(tip + half * 0.35, height * 0.75, half, height * 0.4, half, 0);
	path.closePath();
	if (!(worn > 0)) return path;
	// a blunt end: the tip beyond the wear is left out by clipping the outline at its height
	const cut = new Path2D();
	const kept = height * (1 - worn);
	const share = 1 - worn;
	const left = -half + (tip - half * 0.28 + half) * share ** 2.2;
	const right = half - (half - tip) * share ** 2.4;
	cut.moveTo(-half, 0);
	cut.bezierCurveTo(-half, kept * 0.5, left - half * 0.1, kept * 0.8, left, kept);
	cut.lineTo(right, kept * 0.96);
	cut.bezierCurveTo(right + half * 0.2, kept * 0.7, half, kept * 0.4, half, 0);
	cut.closePath();
	return cut;
}

/** Colour, then pattern, then outline. */
function paint(pen: CanvasRenderingContext2D, path: Path2D, phase: number, outline: string): void {
	pen.fillStyle = phaseColour(phase);
	pen.fill(path);
	const pattern = phasePattern(pen, phaseThird(phase));
	if (pattern) {
		pen.fillStyle = pattern;
		pen.fill(path);
	}
	pen.lineWidth = 1.5;
	pen.strokeStyle = outline;
	pen.stroke(path);
}

/** Joins the places that the eye follows. */
function thread(
	pen: CanvasRenderingContext2D,
	places: readonly (readonly [number, number])[],
	colour: string,
	under: string,
): void {
	pen.beginPath();
	places.forEach(([x, y], index) => (index ? pen.lineTo(x, y) : pen.moveTo(x, y)));
	pen.lineWidth = 6;
	pen.strokeStyle = under;
	pen.stroke();
	pen.lineWidth = 2.5;
	pen.strokeStyle = colour;
	pen.stroke();
	pen.fillStyle = colour;
	for (const [x, y] of places) {
		pen.beginPath();
		pen.arc(x, y, 5, 0, 2 * Math.PI);
		pen.fill();
	}
}

/**
 * A row of upper teeth cut open along the jaw, the front on the left: crowns below the gum line, roots and the next
 * crowns in the bone, shed crowns falling. All sizes in CSS px.
 */
export function drawJaw(pen: CanvasRenderingContext2D, picture: JawPicture): void {
	const { width, height, phases, follow, colours } = picture;
	const count = phases.length;
	const margin = width * 0.015;
	const pitch = (width - 2 * margin) / count;
	const toothWidth = Math.min(pitch * 0.76, height * 0.2);
	// where there is little room, the teeth have it, and the thread runs along their tips
	const roomy = height >= ROOMY_PX;
	const crown = Math.min(height * (roomy ? 0.27 : 0.28), toothWidth * 4);
	const gum = crown * 1.42 + 8;
	const floor = height - 30;

	pen.clearRect(0, 0, width, height);
	const bone = pen.createLinearGradient(0, 0, 0, gum);
	bone.addColorStop(0, colours.felt);
	bone.addColorStop(0.35, colours.seam);
	bone.addColorStop(1, colours.gum);
	pen.fillStyle = bone;
	pen.beginPath();
	pen.roundRect(0, 0, width, gum, [26, 26, 10, 10]);
	pen.fill();

	// the ground that shed crowns fall to
	pen.fillStyle = colours.seam;
	pen.fillRect(0, floor, width, 2);

	// how far each tooth has come, as bars whose tops make the wave that the eye follows
	const tops: [number, number][] = [];
	const most = roomy ? Math.min(crown * 1.5, Math.max(0, floor - gum - crown - 18)) : 0;
	for (let i = 0; i < count; i += 1) {
		const followed = i % follow === 0;
		const centre = margin + pitch * (i + 0.5);
		if (!roomy) {
			const { crown: out, worn } = toothStage(phases[i]);
			if (followed) tops.push([centre + toothWidth * 0.16, gum + crown * out * (1 - worn) + 8]);
			continue;
		}
		const top = floor - Math.max(3, most * phases[i]);
		const bar = new Path2D();
		bar.roundRect(centre - toothWidth * 0.32, top, toothWidth * 0.64, floor - top, [5, 5, 0, 0]);
		pen.globalAlpha = followed ? 1 : 0.3;
		paint(pen, bar, phases[i], colours.felt);
		pen.globalAlpha = 1;
		if (followed) tops.push([centre, top]);
	}
	thread(pen, tops, colours.bone, colours.felt);

	for (let i = 0; i < count; i += 1) {
		const phase = phases[i];
		const tooth = toothStage(phase);
		const followed = i % follow === 0;
		const centre = margin + pitch * (i + 0.5);
		pen.save();
		pen.translate(centre, gum);
		pen.globalAlpha = followed ? 1 : 0.38;

		// the socket, the root in it, then the next crown
		pen.fillStyle = 'rgb(20 12 8 / 0.55)';
		pen.beginPath();
		pen.roundRect(-toothWidth * 0.58, -crown * 1.2, toothWidth * 1.16, crown * 1.2, toothWidth * 0.5);
		pen.fill();
		if (tooth.root > 0.02) {
			const root = crown * tooth.root;
			pen.fillStyle = '#b79c76';
			pen.beginPath();
			pen.moveTo(-toothWidth * 0.5, 0);
			pen.bezierCurveTo(-toothWidth * 0.54, -root * 0.6, -toothWidth * 0.4, -root, 0, -root);
			pen.bezierCurveTo(toothWidth * 0.4, -root, toothWidth * 0.54, -root * 0.6, toothWidth * 0.5, 0);
			pen.fill();
		}
		if (tooth.next > 0.03) {
			const size = tooth.next;
			pen.save();
			pen.translate(toothWidth * 0.06, -crown * tooth.nextDepth * 0.55 - crown * size * 0.62);
			paint(pen, crownPath(toothWidth * 0.86 * size, crown * size * 0.7, 0), 0, colours.felt);
			pen.restore();
		}
		if (tooth.falling !== null) {
			const fall = tooth.falling;
			pen.save();
			pen.globalAlpha *= 1 - fall ** 4;
			pen.translate(toothWidth * 0.3 * fall, (floor - gum - toothWidth * 0.5) * fall ** 2);
			pen.rotate(LEAN * (1 - fall) + fall * 1.3);
			paint(pen, crownPath(toothWidth, crown, MOST_WORN), phase, colours.felt);
			pen.restore();
		}
		if (tooth.crown > 0.02) {
			// erupting: the crown slides out from behind the gum
			pen.save();
			pen.beginPath();
			pen.rect(-pitch, 0, 2 * pitch, height);
			pen.clip();
			pen.rotate(LEAN * tooth.leans);
			pen.translate(0, -crown * (1 - tooth.crown));
			paint(pen, crownPath(toothWidth, crown, tooth.worn), phase, colours.felt);
			pen.restore();
		}
		pen.restore();
	}

	// the gum over the roots' necks
	pen.strokeStyle = colours.gum;
	pen.lineWidth = 7;
	pen.lineCap = 'round';
	pen.beginPath();
	pen.moveTo(4, gum);
	pen.lineTo(width - 4, gum);
	pen.stroke();

	pen.font = picture.font;
	pen.textAlign = 'center';
	pen.textBaseline = 'alphabetic';
	for (let i = 0; i < count; i += 1) {
		pen.fillStyle = i % follow === 0 ? colours.bone : colours.chalk;
		if (pitch < 26 && i % 2) continue;
		pen.fillText(String(i + 1), margin + pitch * (i + 0.5), height - 5);
	}
}
