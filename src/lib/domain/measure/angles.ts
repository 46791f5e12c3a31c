/**
 * The crown's triangle: base length CBL between the mesial and distal base points, apical length AL from the apex
 * to the mesial one, crown height CH from the apex to the distal one. Law of cosines; lengths in any one unit,
 * angles in degrees. Smith, Vann & Dodson 2005, doi:10.1002/ar.a.20206; Hendrickx, Mateus & Araujo 2015,
 * doi:10.1080/02724634.2015.982797. Lengths that make no triangle give NaN.
 */
const between = (near1: number, near2: number, opposite: number): number => {
	const cosine = (near1 * near1 + near2 * near2 - opposite * opposite) / (2 * near1 * near2);
	// rounding may carry a flat triangle a hair past 1
	const safe = Math.abs(cosine) > 1 && Math.abs(cosine) < 1 + 1e-12 ? Math.sign(cosine) : cosine;
	return (Math.acos(safe) * 180) / Math.PI;
};

/** CA (CMA): angle at the mesial base point, degrees. */
export const crownAngle = (cbl: number, al: number, ch: number): number => between(cbl, al, ch);

/** CAA: angle at the apex, degrees. */
export const apexAngle = (cbl: number, al: number, ch: number): number => between(ch, al, cbl);

/** CDA: angle at the distal base point, degrees. */
export const distalAngle = (cbl: number, al: number, ch: number): number => between(cbl, ch, al);
