/**
 * Daily lines in dentine (lines of von Ebner): one line a day, shown with dyes in young alligators by Erickson 1996
 * (doi:10.1002/(sici)1097-4687(199605)228:2<189::aid-jmor7>3.0.co;2-0). Widths are micrometres per day.
 */

/** Age of a tooth from the thickness of its dentine along the axis of the pulp, days. */
export const ageFromThickness = (thickness_um: number, lineWidth_um: number): number =>
	thickness_um / lineWidth_um;

/** Thickness that so many lines make, um. */
export const thicknessFromLines = (lines: number, lineWidth_um: number): number => lines * lineWidth_um;

/** Replacement period from the ages of two teeth of the SAME position, days (Erickson 1996; D'Emic and others 2013). */
export const periodFromLines = (functional: number, successor: number): number => functional - successor;

/** Most generations of teeth present at once, counted from first dentine. */
export const generationsPresent = (oldest_d: number, period_d: number): number =>
	Math.ceil(oldest_d / period_d - 1e-9);

/** Narrowest lines away from the axis: up to 36 % narrower (Kosch & Zanno 2020, PeerJ 9918). */
export const OFF_AXIS_LOSS = 0.36;

/** How many times too old a tooth seems when lines are measured where they are narrower by `loss` (0 .. 1). */
export const offAxisFactor = (loss: number): number => 1 / (1 - loss);
