/** Small shared pieces of arithmetic: easing and smooth interpolation. All pure, no units. */

export const clamp = (x: number, min: number, max: number): number => Math.min(max, Math.max(min, x));

export const lerp = (a: number, b: number, t: number): number => a + (b - a) * t;

/** 0 below `from`, 1 above `to`, an S-curve with level ends between. `from` must be below `to`. */
export const smoothstep = (from: number, to: number, x: number): number => {
	const t = clamp((x - from) / (to - from), 0, 1);
	return t * t * (3 - 2 * t);
};

/** Angle difference a - b wrapped to -pi .. pi. */
export const angleBetween = (a: number, b: number): number => {
	const d = (a - b) % (2 * Math.PI);
	if (d > Math.PI) return d - 2 * Math.PI;
	return d < -Math.PI ? d + 2 * Math.PI : d;
};

/** A number in 0 .. 1 that looks random but depends on `n` only: natural unevenness, the same every time. */
export const unevenness = (n: number): number => {
	const s = Math.sin(n * 127.1 + 311.7) * 43758.5453;
	return s - Math.floor(s);
};

/**
 * The same curve with its corners rounded: a moving average of half width `reach` over [0, 1], which keeps both end
 * values (the curve is taken as point-symmetric about its ends). Cheap to read: it is tabulated once.
 */
export function rounded(curve: (x: number) => number, reach: number): (x: number) => number {
	const steps = 240;
	const beyond = (x: number): number =>
		x < 0 ? 2 * curve(0) - curve(-x) : x > 1 ? 2 * curve(1) - curve(2 - x) : curve(x);
	const table = Float64Array.from({ length: steps + 1 }, (_, i) => {
		let [sum, weights] = [0, 0];
		for (let k = -12; k <= 12; k++) {
			const weight = Math.cos((Math.PI / 2) * (k / 13)) ** 2;
			sum += weight * beyond(i / steps + (reach * k) / 12);
			weights += weight;
		}
		return sum / weights;
	});
	return (x) => {
		const at = clamp(x, 0, 1) * steps;
		const i = Math.min(steps - 1, Math.floor(at));
		return lerp(table[i], table[i + 1], at - i);
	};
}

/**
 * Smooth curve through points without overshoot (monotone piecewise cubic).
 * `xs` rises strictly. Outside the points the end value holds.
 * Source: Fritsch & Carlson 1980, doi:10.1137/0717021 (slopes by the harmonic mean of Fritsch & Butland 1984).
 */
export function monotoneCurve(xs: readonly number[], ys: readonly number[]): (x: number) => number {
	const n = xs.length;
	const secants = xs.slice(1).map((x, i) => (ys[i + 1] - ys[i]) / (x - xs[i]));
	const slopes = xs.map((_, i) => {
		if (i === 0) return secants[0] ?? 0;
		if (i === n - 1) return secants[n - 2];
		const [a, b] = [secants[i - 1], secants[i]];
		return a * b <= 0 ? 0 : (2 * a * b) / (a + b);
	});
	return (x) => {
		if (x <= xs[0]) return ys[0];
		if (x >= xs[n - 1]) return ys[n - 1];
		let i = 0;
		while (x > xs[i + 1]) i++;
		const h = xs[i + 1] - xs[i];
		const t = (x - xs[i]) / h;
		const s = 1 - t;
		return (
			ys[i] * (1 + 2 * t) * s * s +
			slopes[i] * h * t * s * s +
			ys[i + 1] * t * t * (3 - 2 * t) -
			slopes[i + 1] * h * t * t * s
		);
	};
}
