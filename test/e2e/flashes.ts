/** A picture of the screen at a time, sRGB 0..255, row by row, three bytes a pixel. */
export interface Frame {
	at_s: number;
	rgb: Uint8Array | Buffer;
}
export interface Flashes {
	/** the largest share of a ten-degree field that flashes more often than three times in a second, 0..1 */
	general: number;
	red: number;
	/** most flashes (pairs of opposing changes) of one pixel within a second */
	most: number;
}

/** WCAG 2.2, 2.3.1: no more than so many flashes in any one second ... */
export const MOST_FLASHES = 3;
/** ... unless what flashes covers less than this share of any ten-degree field */
export const AREA_SHARE = 0.25;
/** a ten-degree field is taken as 341 x 256 px of 1024 x 768 (WCAG 2.2, "general flash and red flash thresholds") */
const FIELD = { width: 341 / 1024, height: 256 / 768 };

/**
 * Flashes of a recording by the thresholds of WCAG 2.2: a general flash is a pair of opposing changes of relative
 * luminance by 10 % of the maximum or more, where the darker state is below 0.80; a red flash a pair of opposing
 * changes from or to a saturated red (R / (R + G + B) >= 0.8) with a difference of more than 0.2 in the CIE 1976
 * UCS diagram. Counted for each pixel, then by area; a pixel that shows a moving edge counts, so this errs to the
 * strict side.
 */
export function flashes(frames: readonly Frame[], width: number, height: number): Flashes {
	const general = new Uint8Array(width * height);
	const red = new Uint8Array(width * height);
	let most = 0;
	for (let pixel = 0; pixel < width * height; pixel += 1) {
		const states = frames.map(({ at_s, rgb }) =>
			state(at_s, rgb[pixel * 3], rgb[pixel * 3 + 1], rgb[pixel * 3 + 2]),
		);
		const light = mostInASecond(luminanceChanges(states));
		most = Math.max(most, light / 2);
		if (Math.floor(light / 2) > MOST_FLASHES) general[pixel] = 1;
		if (Math.floor(mostInASecond(redChanges(states)) / 2) > MOST_FLASHES) red[pixel] = 1;
	}
	return { general: largestShare(general, width, height), red: largestShare(red, width, height), most };
}

interface State {
	at_s: number;
	/** relative luminance, 0..1 */
	luminance: number;
	saturatedRed: boolean;
	u: number;
	v: number;
}

function state(at_s: number, r8: number, g8: number, b8: number): State {
	const [r, g, b] = [r8, g8, b8].map(linear);
	const luminance = 0.2126 * r + 0.7152 * g + 0.0722 * b;
	const x = 0.4124 * r + 0.3576 * g + 0.1805 * b;
	const z = 0.0193 * r + 0.1192 * g + 0.9505 * b;
	const sum = x + 15 * luminance + 3 * z;
	return {
		at_s,
		luminance,
		saturatedRed: r > 0 && r / (r + g + b) >= 0.8,
		u: sum > 0 ? (4 * x) / sum : 0.1978,
		v: sum > 0 ? (9 * luminance) / sum : 0.4683,
	};
}
const linear = (byte: number): number => {
	const value = byte / 255;
	return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
};

/** Times of opposing changes: each goes the other way than the one before it. */
function luminanceChanges(states: readonly State[]): number[] {
	const times: number[] = [];
	let [low, high] = [states[0].luminance, states[0].luminance];
	let way = 0;
	for (const { at_s, luminance } of states) {
		low = Math.min(low, luminance);
		high = Math.max(high, luminance);
		const rose = luminance - low >= 0.1 && low < 0.8;
		const fell = high - luminance >= 0.1 && luminance < 0.8;
		if (rose && way !== 1) [way, high] = [1, luminance];
		else if (fell && way !== -1) [way, low] = [-1, luminance];
		else {
			// further the same way: the next change is measured from its end
			if (way === 1 && luminance >= high) low = Math.max(low, luminance - 0.0999);
			if (way === -1 && luminance <= low) high = Math.min(high, luminance + 0.0999);
			continue;
		}
		times.push(at_s);
	}
	return times;
}

function redChanges(states: readonly State[]): number[] {
	const times: number[] = [];
	let [last] = states;
	for (const now of states) {
		const far = Math.hypot(now.u - last.u, now.v - last.v) > 0.2;
		if (far && now.saturatedRed !== last.saturatedRed) {
			times.push(now.at_s);
			last = now;
		}
	}
	return times;
}

function mostInASecond(times: readonly number[]): number {
	let [most, from] = [0, 0];
	for (let to = 0; to < times.length; to += 1) {
		while (times[to] - times[from] > 1) from += 1;
		most = Math.max(most, to - from + 1);
	}
	return most;
}

/** The largest share of a field of ten degrees, wherever it lies on the screen. */
function largestShare(marked: Uint8Array, width: number, height: number): number {
	const [w, h] = [Math.round(width * FIELD.width), Math.round(height * FIELD.height)];
	let largest = 0;
	for (let top = 0; top + h <= height; top += 1)
		for (let left = 0; left + w <= width; left += 1) {
			let count = 0;
			for (let y = top; y < top + h; y += 1)
				for (let x = left; x < left + w; x += 1) count += marked[y * width + x];
			largest = Math.max(largest, count / (w * h));
		}
	return largest;
}
