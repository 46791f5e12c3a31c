import type { TouchPart } from '../../domain/quiz/question';

const HEIGHTS = ['root', 'low', 'middle', 'high', 'tip'] as const;
const SIDES = ['distal', 'labial', 'mesial', 'lingual'] as const;

/** A marked place for those who do not see the pin: how high it stands, and on which side. Lingual is where labial is not. */
export function whereOnTooth(
	{ at, where_deg }: Pick<TouchPart, 'at' | 'where_deg'>,
	labial: '+z' | '-z' | null,
): { height: (typeof HEIGHTS)[number]; side: (typeof SIDES)[number] | 'all' } {
	const height = HEIGHTS[[0, 1 / 3, 2 / 3, 0.9].filter((from) => at >= from).length];
	// at the tip all sides meet
	if (height === 'tip') return { height, side: 'all' };
	const turned = labial === '-z' ? -where_deg : where_deg;
	return { height, side: SIDES[Math.round((((turned % 360) + 360) % 360) / 90) % 4] };
}
