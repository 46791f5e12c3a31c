/** Things that everyone knows the size of, drawn by us to lie beside a tooth; mm, y down, top left at 0, 0. */
export interface SizeFigure {
	path: string;
	width_mm: number;
	height_mm: number;
}

/** The open hand of a child of about seven, 13 cm from wrist to fingertip (common practice, no source). */
const HAND: SizeFigure = {
	width_mm: 81,
	height_mm: 130,
	path: 'M39.2 0.2Q40.2 0 41.2 0.2Q42.2 0.4 43 0.9Q43.9 1.4 44.5 2.2Q45.1 3 45.4 3.9Q45.7 4.8 46.9 26.9Q48.1 49 48.2 49.8Q48.3 50.5 48.6 51.1Q48.9 51.6 49.2 51.2Q49.5 50.8 49.7 50Q49.9 49.2 51.6 31.6Q53.3 14 53.8 13Q54.2 12 54.5 11.6Q54.9 11.1 55.4 10.7Q55.9 10.4 56.5 10.1Q57.2 9.8 57.8 9.7Q58.4 9.6 59 9.6Q59.7 9.7 60.3 9.9Q60.9 10.1 61.4 10.4Q62 10.8 62.5 11.2Q63 11.8 63.3 12.4Q63.7 13 63.8 13.6Q64 14.2 63.3 34Q62.5 53.8 62.7 54.9Q62.8 56 63.2 57.1Q63.7 58.1 63.8 58.1Q63.9 58.2 64.3 58Q64.7 57.7 64.9 57.4Q65.2 57 65.5 56.5Q65.7 56 68.5 44.4Q71.4 32.8 71.8 32Q72.2 31.2 72.7 30.6Q73.2 30.1 73.8 29.8Q74.4 29.4 75.2 29.3Q75.9 29.1 76.7 29.2Q77.4 29.3 78 29.5Q78.7 29.8 79.3 30.3Q79.9 30.8 80.3 31.4Q80.6 32 80.8 32.8Q81 33.5 81 34.1Q81 34.8 78.3 50Q75.6 65.2 75.6 69.2Q75.7 73.2 75.4 77Q75.1 80.8 75.1 90.6Q75.1 100.5 75.2 103.8Q75.3 107 75.2 108.2Q75.1 109.5 74.8 110.9Q74.4 112.2 72.5 117.6Q70.5 123 69.5 126.5Q68.4 130 61 130Q53.7 130 41.3 130Q28.9 130 28.8 129.9Q28.7 129.8 28.1 127.6Q27.6 125.5 27.1 124.4Q26.7 123.2 26.1 122.2Q25.5 121.2 23.4 118.2Q21.3 115.2 20.1 112.9Q19 110.5 18.3 108.8Q17.7 107 16.4 102.5Q15.1 98 13.7 94.5Q12.3 91 11.7 89.8Q11.2 88.6 9.6 86.3Q8.1 84 7.4 82.6Q6.7 81.2 6.3 79.8Q5.9 78.2 5.5 74.6Q5 71 2.5 62.9Q0 54.8 0 54Q0 53.2 0.2 52.5Q0.4 51.8 0.8 51Q1.2 50.3 1.7 49.8Q2.2 49.2 2.8 48.8Q3.4 48.4 4.2 48.2Q4.9 47.9 5.8 47.9Q6.7 47.8 7.4 48Q8.2 48.1 9 48.6Q9.9 49.1 10.7 49.9Q11.4 50.7 13.3 54.8Q15.2 59 15.7 59.9Q16.2 60.8 16.7 61.5Q17.2 62.2 17.7 62.6Q18.2 63 18.5 63.1Q18.9 63.2 19.3 63Q19.7 62.9 20 62.4Q20.4 62 20.8 61Q21.1 60 21.1 58.9Q21.2 57.8 19.4 37.2Q17.6 16.8 17.8 15.8Q18 14.8 18.6 13.9Q19.2 13 20.1 12.4Q20.9 11.9 21.9 11.6Q22.9 11.4 23.8 11.5Q24.7 11.6 25.5 12Q26.4 12.4 27.1 13.1Q27.7 13.8 28.1 14.6Q28.5 15.5 31.2 33.5Q33.8 51.5 34 52.1Q34.2 52.8 34.3 52.5Q34.4 52.3 34.4 51.8Q34.5 51.2 34.5 28.1Q34.6 5 34.9 4Q35.2 3 35.8 2.2Q36.4 1.4 37.3 0.9Q38.2 0.4 39.2 0.2z',
};

/** A grain of long rice, 7 mm (common practice, no source). */
const RICE: SizeFigure = {
	width_mm: 2.1,
	height_mm: 7,
	path: 'M.9 .05Q1.55 -.05 1.8 .9Q2.15 2.2 2.1 3.6Q2.05 5.4 1.6 6.4Q1.3 7.05 .9 7Q.45 6.9 .25 6Q-.05 4.7 0 3.3Q.05 1.7 .4 .6Q.6 .1 .9 .05z',
};

export const SIZE_FIGURES = { hand: HAND, rice: RICE } as const;
export type SizeFigureName = keyof typeof SIZE_FIGURES;

/** Teeth up to this height go with the grain of rice: beside a hand nothing of them would be seen. */
export const RICE_UP_TO_mm = 18;

/** What lies well beside teeth of these heights. */
export const sizeFigureFor = (heights_mm: readonly number[]): SizeFigureName =>
	Math.max(0, ...heights_mm) <= RICE_UP_TO_mm ? 'rice' : 'hand';
