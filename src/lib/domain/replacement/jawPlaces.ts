/** Where a tooth position stands in a jaw seen from above, and which way out is. */
export interface JawPlace {
	side: 'left' | 'right';
	position: number;
	/** across: + = the animal's right; along: + = towards the back; fractions of the jaw's length */
	across: number;
	along: number;
	/** direction of the lip side, radians from + across towards + along */
	outward: number;
}

/**
 * Places of all positions of both sides along a jaw: a parabola with its front at (0, 0). Left is the mirror of right.
 * @param halfWidth half the width at the back end over the length
 */
export function jawPlaces(positions: number, halfWidth = 0.32): JawPlace[] {
	// points at equal steps along the curve across = halfWidth * sqrt(along)
	const curve: { along: number; across: number; at: number }[] = [];
	const STEPS = 400;
	let at = 0;
	for (let i = 0; i <= STEPS; i++) {
		const s = i / STEPS;
		const point = { along: s * s, across: halfWidth * s, at: 0 };
		const last = curve[i - 1];
		if (last) at += Math.hypot(point.along - last.along, point.across - last.across);
		curve.push({ ...point, at });
	}
	const right = Array.from({ length: positions }, (_, i): JawPlace => {
		const goal = (at * (i + 0.6)) / positions;
		const k = Math.max(
			1,
			curve.findIndex((p) => p.at >= goal),
		);
		const [a, b] = [curve[k - 1], curve[k]];
		const t = (goal - a.at) / (b.at - a.at);
		const along = a.along + (b.along - a.along) * t;
		const across = a.across + (b.across - a.across) * t;
		// outward is square to the curve, away from the middle
		const [dx, dy] = [b.across - a.across, b.along - a.along];
		return { side: 'right', position: i + 1, across, along, outward: Math.atan2(-dx, dy) };
	});
	const left = right.map((place): JawPlace => ({
		...place,
		side: 'left',
		across: -place.across,
		outward: Math.PI - place.outward,
	}));
	return [...right, ...left];
}
