/**
 * Moves places on a line apart so that neighbours keep at least `gap` between them, in the same order and as near to
 * where they were as that allows; all stay within `from` and `to` where there is room for them.
 * @param at places in rising order
 */
export function spreadLabels(at: readonly number[], gap: number, from: number, to: number): number[] {
	// groups of neighbours that touch, each centred on where its members wanted to be
	const groups: { first: number; size: number; sum: number }[] = [];
	const start = ({ size, sum }: { size: number; sum: number }) => {
		const wanted = sum / size - ((size - 1) * gap) / 2;
		return Math.max(from, Math.min(wanted, to - (size - 1) * gap));
	};
	at.forEach((place, i) => {
		groups.push({ first: i, size: 1, sum: place });
		while (groups.length > 1) {
			const last = groups[groups.length - 1];
			const before = groups[groups.length - 2];
			if (start(before) + before.size * gap <= start(last)) break;
			groups.pop();
			before.size += last.size;
			before.sum += last.sum;
		}
	});
	return groups.flatMap((group) => Array.from({ length: group.size }, (_, k) => start(group) + k * gap));
}
