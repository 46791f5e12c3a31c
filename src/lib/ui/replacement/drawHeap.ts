import type { Heap } from '../../domain/replacement/heapSize';
import { seededRandom } from '../../domain/random/seededRandom';
import { CHILD_HEIGHT_M, CHILD_PATH, CHILD_UNITS_PER_M, CHILD_WIDTH_M } from '../childOutline';
import { HAND_LENGTH_MM, HAND_PATH, HAND_WIDTH_MM } from './handOutline';

export interface HeapPicture {
	width: number;
	height: number;
	count: number;
	heap: Heap;
	tooth: { height_mm: number; length_mm: number };
	/** what stands beside it for scale */
	beside: 'child' | 'hand';
	colours: { bone: string; amber: string; seam: string; chalk: string; felt: string };
}

/** Most teeth that are drawn one by one; those beneath are not seen anyway. */
const MOST_DRAWN = 5200;

/** Px per mm at which heap and measure fit in the picture. */
export function heapScale({ width, height, heap, tooth, beside }: HeapPicture): number {
	const measure_mm =
		beside === 'child'
			? { wide: CHILD_WIDTH_M * 1000, high: CHILD_HEIGHT_M * 1000 }
			: { wide: HAND_WIDTH_MM, high: HAND_LENGTH_MM };
	const heapWide_mm = Math.max(10 * heap.width_cm, tooth.height_mm * 2);
	const wide_mm = (measure_mm.wide + heapWide_mm) * 1.12 + measure_mm.wide * 0.15;
	const high_mm = Math.max(measure_mm.high, 10 * heap.height_cm) * 1.08;
	return Math.min(width / wide_mm, (height - 8) / high_mm);
}

/** The heap and its measure side by side on one floor. */
export function drawHeap(pen: CanvasRenderingContext2D, picture: HeapPicture): void {
	const { width, height, count, heap, tooth, beside, colours } = picture;
	const pxPerMm = heapScale(picture);
	const floor = height - 6;
	pen.clearRect(0, 0, width, height);

	const measureWide = (beside === 'child' ? CHILD_WIDTH_M * 1000 : HAND_WIDTH_MM) * pxPerMm;
	const radius = Math.max(5 * heap.width_cm, tooth.height_mm) * pxPerMm;
	const gap = measureWide * 0.15 + 8;
	const left = Math.max(0, (width - (measureWide + gap + 2 * radius)) / 2);

	pen.save();
	pen.fillStyle = colours.chalk;
	if (beside === 'child') {
		const unit = (pxPerMm * 1000) / CHILD_UNITS_PER_M;
		pen.translate(left, floor - CHILD_HEIGHT_M * 1000 * pxPerMm);
		pen.scale(unit, unit);
		pen.fill(new Path2D(CHILD_PATH));
	} else {
		pen.translate(left, floor - HAND_LENGTH_MM * pxPerMm);
		pen.scale(pxPerMm, pxPerMm);
		pen.fill(new Path2D(HAND_PATH));
	}
	pen.restore();

	pen.strokeStyle = colours.seam;
	pen.lineWidth = 2;
	pen.beginPath();
	pen.moveTo(0, floor + 1);
	pen.lineTo(width, floor + 1);
	pen.stroke();
	if (count < 1) return;

	const centre = left + measureWide + gap + radius;
	const long = Math.max(1.4, tooth.height_mm * pxPerMm);
	const wide = Math.max(1, tooth.length_mm * pxPerMm);
	const top = 10 * heap.height_cm * pxPerMm;
	const random = seededRandom(7);
	// dark ground, so that no felt shows between the teeth
	pen.fillStyle = '#5d4426';
	pen.beginPath();
	pen.moveTo(centre - radius * 0.97, floor);
	pen.quadraticCurveTo(centre - radius * 0.1, floor - top * 1.02, centre, floor - top * 0.97);
	pen.quadraticCurveTo(centre + radius * 0.1, floor - top * 1.02, centre + radius * 0.97, floor);
	if (count > 12) pen.fill();

	const needed = Math.ceil((radius * Math.max(top, long) * 3.4) / (long * wide));
	const drawn = Math.min(count, MOST_DRAWN, Math.max(needed, 12));
	const crown = new Path2D();
	crown.moveTo(-long / 2, -wide / 2);
	crown.quadraticCurveTo(long * 0.25, -wide * 0.52, long / 2, wide * 0.08);
	crown.quadraticCurveTo(long * 0.1, wide * 0.36, -long / 2, wide / 2);
	crown.quadraticCurveTo(-long * 0.42, 0, -long / 2, -wide / 2);
	// from the top down, so that what lies lower lies in front
	const places = Array.from({ length: drawn }, () => {
		const up = 1 - Math.sqrt(random());
		const across = (random() * 2 - 1) * (1 - up);
		return { up, across, turn: random() * Math.PI * 2, shade: random() };
	}).sort((a, b) => b.up - a.up);
	for (const { up, across, turn, shade } of places) {
		pen.save();
		pen.translate(centre + across * radius, floor - Math.max(wide * 0.4, up * top));
		pen.rotate(turn);
		const light = 62 + Math.round(26 * shade) - Math.round(14 * Math.abs(across));
		pen.fillStyle = `hsl(${34 + Math.round(8 * shade)} ${34 + Math.round(18 * (1 - shade))}% ${light}%)`;
		pen.fill(crown);
		if (long > 7) {
			pen.lineWidth = 0.8;
			pen.strokeStyle = 'rgb(40 22 8 / 0.6)';
			pen.stroke(crown);
		}
		pen.restore();
	}
}
