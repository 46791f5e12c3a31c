/**
 * Gives a canvas as many pixels as its place has, and its pen in CSS px; null while it has no place.
 * The picture is kept in main memory: where there is no graphics card, drawing through an imitated one takes many
 * times as long.
 */
export function fittedCanvas(
	canvas: HTMLCanvasElement,
	width: number,
	height: number,
): CanvasRenderingContext2D | null {
	if (!(width > 0 && height > 0)) return null;
	const ratio = Math.min(2, devicePixelRatio || 1);
	const [across, down] = [Math.round(width * ratio), Math.round(height * ratio)];
	if (canvas.width !== across || canvas.height !== down) {
		canvas.width = across;
		canvas.height = down;
	}
	const pen = canvas.getContext('2d', { willReadFrequently: true });
	pen?.setTransform(ratio, 0, 0, ratio, 0, 0);
	return pen;
}
