/** How a tooth's phase looks: a colour that darkens all the way, and a pattern for each third. */

/** Light to dark, so that the order can be told without colours. */
const RAMP: readonly (readonly [number, number, number])[] = [
	[250, 242, 226],
	[240, 173, 78],
	[140, 58, 36],
];
const SHADES = 48;

/** Colours from just erupted to about to fall. */
const PAINTED: readonly string[] = Array.from({ length: SHADES }, (_, i) => {
	const place = (i / (SHADES - 1)) * (RAMP.length - 1);
	const low = Math.min(RAMP.length - 2, Math.floor(place));
	const share = place - low;
	const [r, g, b] = [0, 1, 2].map((k) =>
		Math.round(RAMP[low][k] + (RAMP[low + 1][k] - RAMP[low][k]) * share),
	);
	return `rgb(${r} ${g} ${b})`;
});

/** `phase` 0 = just erupted, towards 1 = about to fall. */
export const phaseColour = (phase: number): string =>
	PAINTED[Math.min(SHADES - 1, Math.max(0, Math.floor(phase * SHADES)))];

export const PHASE_THIRDS = ['new', 'working', 'old'] as const;
export type PhaseThird = (typeof PHASE_THIRDS)[number];

export const phaseThird = (phase: number): PhaseThird =>
	PHASE_THIRDS[Math.min(2, Math.max(0, Math.floor(phase * 3)))];

const TILE_PX = 10;
/** patterns of each pen by third; null = plain */
const made = new WeakMap<CanvasRenderingContext2D, Map<PhaseThird, CanvasPattern | null>>();

/** The pattern of a third, to be laid over its colour; null = plain. */
export function phasePattern(pen: CanvasRenderingContext2D, third: PhaseThird): CanvasPattern | null {
	let patterns = made.get(pen);
	if (!patterns) made.set(pen, (patterns = new Map()));
	let pattern = patterns.get(third);
	if (pattern === undefined) {
		const drawn = tile(third);
		pattern = drawn && pen.createPattern(drawn, 'repeat');
		patterns.set(third, pattern);
	}
	return pattern;
}

/** Bars for the middle third, crossed bars for the last. */
function tile(third: PhaseThird): HTMLCanvasElement | null {
	if (third === 'new') return null;
	const canvas = document.createElement('canvas');
	canvas.width = canvas.height = TILE_PX;
	const pen = canvas.getContext('2d');
	if (!pen) return null;
	pen.strokeStyle = third === 'old' ? 'rgb(255 235 200 / 0.75)' : 'rgb(60 30 5 / 0.5)';
	pen.lineWidth = 1.6;
	pen.beginPath();
	pen.moveTo(0, TILE_PX / 2);
	pen.lineTo(TILE_PX, TILE_PX / 2);
	if (third === 'old') {
		pen.moveTo(TILE_PX / 2, 0);
		pen.lineTo(TILE_PX / 2, TILE_PX);
	}
	pen.stroke();
	return canvas;
}
