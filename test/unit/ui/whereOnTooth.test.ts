import { expect, it } from 'vitest';
import { whereOnTooth } from '../../../src/lib/ui/quiz/whereOnTooth';

it('says how high a place stands, and at the tip no side', () => {
	const heights = [-0.2, 0.1, 0.5, 0.8].map((at) => whereOnTooth({ at, where_deg: 90 }, '+z').height);
	expect(heights).toEqual(['root', 'low', 'middle', 'high']);
	expect(whereOnTooth({ at: 1, where_deg: 90 }, '+z')).toEqual({ height: 'tip', side: 'all' });
});

it('names the side from +x (away from the snout) towards +z (the lip), the other way round where the lip lies along -z', () => {
	const sides = (labial: '+z' | '-z' | null) =>
		[0, 90, 180, 270, 340, -90].map((where_deg) => whereOnTooth({ at: 0.5, where_deg }, labial).side);
	expect(sides('+z')).toEqual(['distal', 'labial', 'mesial', 'lingual', 'distal', 'lingual']);
	expect(sides(null)).toEqual(sides('+z'));
	expect(sides('-z')).toEqual(['distal', 'lingual', 'mesial', 'labial', 'distal', 'labial']);
});
