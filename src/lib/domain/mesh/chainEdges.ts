export interface Chain {
	/** node numbers in order, each once */
	nodes: number[];
	closed: boolean;
}

/**
 * Joins pairs of nodes into the longest lines that do not pass through a node where three or more meet.
 * The first chains are those with ends, then rings.
 */
export function chainEdges(pairs: readonly (readonly [number, number])[]): Chain[] {
	const links = new Map<number, number[]>();
	const link = (a: number, b: number): void => {
		const known = links.get(a);
		if (known) known.push(b);
		else links.set(a, [b]);
	};
	for (const [a, b] of pairs) {
		link(a, b);
		link(b, a);
	}
	const meets = new Map([...links].map(([node, others]) => [node, others.length]));
	const chains: Chain[] = [];
	const walk = (start: number): void => {
		const nodes = [start];
		let node = start;
		for (;;) {
			const next = links.get(node)?.pop();
			if (next === undefined) break;
			const back = links.get(next)!;
			back.splice(back.indexOf(node), 1);
			if (next === start) {
				chains.push({ nodes, closed: nodes.length > 2 });
				return;
			}
			nodes.push(next);
			node = next;
			if (meets.get(node) !== 2) break;
		}
		if (nodes.length > 1) chains.push({ nodes, closed: false });
	};
	for (const [node, count] of meets)
		if (count !== 2) for (let i = links.get(node)!.length; i > 0; i = links.get(node)!.length) walk(node);
	for (const node of meets.keys()) if (links.get(node)!.length === 2) walk(node);
	return chains;
}
