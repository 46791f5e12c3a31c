import { inflateSync } from 'node:zlib';

type Matrix = [number, number, number, number, number, number];

/** `a` first, then `b`: ISO 32000-1, 8.3.4. */
const after = (a: Matrix, b: Matrix): Matrix => [
	a[0] * b[0] + a[1] * b[2],
	a[0] * b[1] + a[1] * b[3],
	a[2] * b[0] + a[3] * b[2],
	a[2] * b[1] + a[3] * b[3],
	a[4] * b[0] + a[5] * b[2] + b[4],
	a[4] * b[1] + a[5] * b[3] + b[5],
];

/** Sizes of the pages of a PDF, points (1/72 inch). */
export function pdfPages(pdf: Buffer): { width_pt: number; height_pt: number }[] {
	const boxes = pdf.toString('latin1').matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g);
	return [...boxes].map(([, width, height]) => ({ width_pt: Number(width), height_pt: Number(height) }));
}

/**
 * Lengths on paper, mm, of every scale bar in a PDF: an open path of four points, a tick, a level line, a tick. Follows
 * the path operators m and l and the matrices q, Q and cm of ISO 32000-1, tables 57 and 59; everything else is passed over.
 */
export function pdfBars(pdf: Buffer): number[] {
	const bars: number[] = [];
	for (const text of streams(pdf)) {
		let matrix: Matrix = [1, 0, 0, 1, 0, 0];
		const kept: Matrix[] = [];
		let operands: number[] = [];
		let path: [number, number][] = [];
		const end = () => {
			const length = barLength(path);
			if (length !== null) bars.push((length / 72) * 25.4);
			path = [];
		};
		for (const word of text.split(/\s+/)) {
			if (/^[-+]?(\d+\.?\d*|\.\d+)$/.test(word)) {
				operands.push(Number(word));
				continue;
			}
			if (word === 'q') kept.push(matrix);
			else if (word === 'Q') matrix = kept.pop() ?? [1, 0, 0, 1, 0, 0];
			else if (word === 'cm' && operands.length === 6) matrix = after(operands as Matrix, matrix);
			else if (word === 'm' || word === 'l') {
				if (word === 'm') end();
				const [x, y] = operands.slice(-2);
				path.push([x * matrix[0] + y * matrix[2] + matrix[4], x * matrix[1] + y * matrix[3] + matrix[5]]);
			} else if (word === 'c' || word === 'h' || word === 're') path = [];
			else if (word === 'S') end();
			operands = [];
		}
	}
	return bars;
}

function barLength(path: readonly [number, number][]): number | null {
	if (path.length !== 4) return null;
	const [a, b, c, d] = path;
	const same = (x: number, y: number) => Math.abs(x - y) < 0.02;
	const ticks = same(a[0], b[0]) && same(c[0], d[0]) && same(a[1], d[1]) && same(b[1], c[1]);
	return ticks && !same(a[1], b[1]) && !same(b[0], c[0]) ? Math.abs(c[0] - b[0]) : null;
}

function streams(pdf: Buffer): string[] {
	const found: string[] = [];
	let at = 0;
	for (;;) {
		const start = pdf.indexOf('stream', at);
		if (start < 0) return found;
		const end = pdf.indexOf('endstream', start);
		if (end < 0) return found;
		const from = start + 6 + (pdf[start + 6] === 13 ? 2 : 1);
		try {
			found.push(inflateSync(pdf.subarray(from, end)).toString('latin1'));
		} catch {
			// a picture or a font in another coding draws no bar
		}
		at = end + 9;
	}
}
