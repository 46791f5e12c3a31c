import { describe, expect, it } from 'vitest';
import { chainEdges } from '../../../src/lib/domain/mesh/chainEdges';

describe('chainEdges', () => {
	it('joins pairs in any order and direction into one line', () => {
		const [chain, ...more] = chainEdges([
			[3, 2],
			[0, 1],
			[4, 3],
			[1, 2],
		]);
		expect(more).toEqual([]);
		expect(chain.closed).toBe(false);
		expect([chain.nodes, [...chain.nodes].reverse()]).toContainEqual([0, 1, 2, 3, 4]);
	});

	it('closes a ring', () => {
		const [ring, ...more] = chainEdges([
			[7, 8],
			[9, 8],
			[9, 7],
		]);
		expect(more).toEqual([]);
		expect(ring.closed).toBe(true);
		expect([...ring.nodes].sort()).toEqual([7, 8, 9]);
	});

	it('ends lines where three meet and takes every pair once', () => {
		// a ring 0 1 2 with a tail 0 3 4
		const chains = chainEdges([
			[0, 1],
			[1, 2],
			[2, 0],
			[0, 3],
			[3, 4],
		]);
		expect(chains).toHaveLength(2);
		const pairs = chains.reduce((sum, { nodes, closed }) => sum + nodes.length - (closed ? 0 : 1), 0);
		expect(pairs).toBe(5);
		for (const { nodes } of chains) expect(nodes.slice(1, -1)).not.toContain(0);
	});

	it('makes nothing of nothing', () => expect(chainEdges([])).toEqual([]));
});
