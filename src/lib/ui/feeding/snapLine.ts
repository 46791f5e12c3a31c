/**
 * A jagged line across a crown, tip down, where it has snapped: SVG path in the crown's frame, y down.
 *
 * @param crown closed outline, tip up, mm
 * @param up_mm height of the break above the base
 * @param jag_mm how far it goes up and down
 */
export function snapLine(
	crown: readonly (readonly [number, number])[],
	up_mm: number,
	jag_mm: number,
): string {
	const xs: number[] = [];
	crown.forEach(([ax, ay], i) => {
		const [bx, by] = crown[(i + 1) % crown.length];
		if (ay === by || (ay - up_mm) * (by - up_mm) > 0) return;
		xs.push(ax + ((up_mm - ay) / (by - ay)) * (bx - ax));
	});
	if (xs.length < 2) return '';
	const over = jag_mm * 1.2;
	const [left, right] = [Math.min(...xs) - over, Math.max(...xs) + over];
	const STEPS = 6;
	return Array.from({ length: STEPS + 1 }, (_, i) => {
		const x = left + ((right - left) * i) / STEPS;
		const y = up_mm + (i === 0 || i === STEPS ? 0 : i % 2 ? jag_mm : -jag_mm);
		return `${i ? 'L' : 'M'}${x.toFixed(2)} ${y.toFixed(2)}`;
	}).join('');
}
