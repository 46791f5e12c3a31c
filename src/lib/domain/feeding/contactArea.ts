/** A rounded cone, round or flattened, as prey meets it. */
export interface Indenter {
	/** radius of the rounded tip, mm; 0 = a point */
	tipRadius_mm: number;
	/** half of the included angle along the jaw and across it, degrees; alike on a round cone; below 90 */
	halfAngleLength_deg: number;
	halfAngleWidth_deg: number;
	/** how sharp its edges are: 0 none, 1 two strong sharp ones */
	edges: number;
	/** crown height and base diameters, mm: no contact is larger than the crown */
	height_mm: number;
	baseLength_mm: number;
	baseWidth_mm: number;
}

/** A round cone for calculation: included angle in degrees, as long as need be. */
export function roundIndenter(tipRadius_mm: number, included_deg: number, edges = 0): Indenter {
	const half = included_deg / 2;
	return {
		tipRadius_mm,
		halfAngleLength_deg: half,
		halfAngleWidth_deg: half,
		edges,
		height_mm: Infinity,
		baseLength_mm: Infinity,
		baseWidth_mm: Infinity,
	};
}

/**
 * Radius of a rounded cone at a depth behind its tip, mm: a sphere of radius R down to R (1 - sin a), then a cone of half
 * angle a that touches it.
 */
export function radiusAt(depth_mm: number, tipRadius_mm: number, halfAngle_deg: number): number {
	if (depth_mm <= 0) return 0;
	const a = (halfAngle_deg * Math.PI) / 180;
	const cap_mm = tipRadius_mm * (1 - Math.sin(a));
	return depth_mm <= cap_mm
		? Math.sqrt(2 * tipRadius_mm * depth_mm - depth_mm ** 2)
		: tipRadius_mm * Math.cos(a) + (depth_mm - cap_mm) * Math.tan(a);
}

/**
 * Contact area of a rounded cone at a depth, seen along its axis, mm2: pi (2 R h - h^2) on the sphere, pi (R cos a +
 * (h - h_t) tan a)^2 below it (plain geometry). A flattened cone is an ellipse of its two radii. It grows neither beyond
 * the crown's height nor beyond its base.
 */
export function contactArea_mm2(indenter: Indenter, depth_mm: number): number {
	const depth = Math.min(depth_mm, indenter.height_mm);
	const { tipRadius_mm, halfAngleLength_deg, halfAngleWidth_deg } = indenter;
	const along = Math.min(radiusAt(depth, tipRadius_mm, halfAngleLength_deg), indenter.baseLength_mm / 2);
	const across = Math.min(radiusAt(depth, tipRadius_mm, halfAngleWidth_deg), indenter.baseWidth_mm / 2);
	return Math.PI * along * across;
}

/**
 * The rounded cone of a crown: half angles of the straight sides from the rounding of the tip to the base, so that at the
 * base's depth the cone is as wide as the base: tan a = (base half width - R cos a) / (height - R (1 - sin a)).
 */
export function indenterTop(crown: Omit<Indenter, 'halfAngleLength_deg' | 'halfAngleWidth_deg'>): Indenter {
	const angle = (half_mm: number): number => {
		let [low, high] = [0, 89];
		for (let i = 0; i < 40; i++) {
			const middle = (low + high) / 2;
			if (radiusAt(crown.height_mm, crown.tipRadius_mm, middle) < half_mm) low = middle;
			else high = middle;
		}
		return (low + high) / 2;
	};
	return {
		...crown,
		halfAngleLength_deg: angle(crown.baseLength_mm / 2),
		halfAngleWidth_deg: angle(crown.baseWidth_mm / 2),
	};
}
