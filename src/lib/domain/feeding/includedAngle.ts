/** Included angle of a straight cone from its slenderness (CHR = height over base diameter): 2 atan(1 / 2 CHR), degrees. */
export const includedAngle_deg = (slenderness: number): number =>
	(2 * Math.atan(1 / (2 * slenderness)) * 180) / Math.PI;
