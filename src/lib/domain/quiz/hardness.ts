/**
 * How hard a question is, 0 .. 1: how hard the trait is to see, eased by the margin; at a margin of 4 and more only a
 * third of it is left. Ours; what the classes really find hard is told by the item analysis.
 */
export function hardness(hard: number, margin: number): number {
	const near = 1 - Math.min(1, Math.max(0, (margin - 1) / 3));
	return Math.min(1, hard * (1 / 3 + (2 / 3) * near) + 0.25 * near);
}
