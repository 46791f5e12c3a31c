import { beforeAll, describe, expect, it } from 'vitest';
import { lineDrawing, type LineDrawing } from '../../../src/lib/domain/mesh/lineDrawing';
import { lineDrawingSvg } from '../../../src/lib/domain/mesh/lineDrawingSvg';
import { sculpt } from '../../../src/lib/domain/tooth/sculpt';
import { ellipticCone } from './shapes';

const labels = { side: 'Side', front: 'Front', tip: 'Tip', section: 'Cut' };
const PARTS = ['side', 'front', 'tip', 'section'] as const;

interface Box {
	x0: number;
	x1: number;
	y0: number;
	y1: number;
}

/** Bounds of one kind of line of one part as it stands on the page, px. */
function boundsOf(svg: string, part: string, kind: string): Box {
	const group = new RegExp(
		`<g data-part="${part}" transform="translate\\(([-\\d.]+) ([-\\d.]+)\\) scale\\(([\\d.]+)\\)">(.*?)</g>`,
	).exec(svg)!;
	const [left, top, scale] = group.slice(1, 4).map(Number);
	const path = new RegExp(`data-kind="${kind}"[^>]* d="([^"]+)"`).exec(group[4])![1];
	const box = { x0: Infinity, x1: -Infinity, y0: Infinity, y1: -Infinity };
	for (const piece of path.match(/M[^M]+/g)!) {
		const numbers = piece.match(/-?\d+/g)!.map(Number);
		let [x, y] = [0, 0];
		for (let i = 0; i + 1 < numbers.length; i += 2) {
			x += numbers[i];
			y += numbers[i + 1];
			box.x0 = Math.min(box.x0, left + x * scale);
			box.x1 = Math.max(box.x1, left + x * scale);
			box.y0 = Math.min(box.y0, top + y * scale);
			box.y1 = Math.max(box.y1, top + y * scale);
		}
	}
	return box;
}

function barOf(svg: string): { pxPerMm: number; mm: number; px: number; y: number } {
	const [, pxPerMm, mm, x0, , y, x1] =
		/data-px-per-mm="([\d.]+)" data-mm="([\d.]+)"[^>]* d="M([\d.]+) ([\d.]+)V([\d.]+)H([\d.]+)V/
			.exec(svg)!
			.map(Number);
	return { pxPerMm, mm, px: x1 - x0, y };
}

describe('lineDrawingSvg', () => {
	const cone = lineDrawing(ellipticCone(10, 6, [4, 40, 0]), { axialHeight_mm: 40 });
	const svg = lineDrawingSvg(cone, { width: 800, height: 700, labels, title: 'A tooth', desc: 'Its shape' });
	let serrated: LineDrawing;
	beforeAll(() => {
		const made = sculpt({
			crownHeight_mm: 46,
			baseLength_mm: 25,
			baseWidth_mm: 17,
			sections: [{ at: 0, shape: 'blade' }],
			taper: 'bullet',
			curve: { distal_deg: 30, lingual_deg: 4, startsAt: 0.1 },
			tipRadius_mm: 1.2,
			carinae: [
				{ where: 'mesial', prominence_mm: 0.9, from: 0, serrationsPer5mm: 8 },
				{ where: 'distal', prominence_mm: 0.9, from: 0, serrationsPer5mm: 8 },
			],
			root: { state: 'resorbed', length_mm: 7, pitSide: 'lingual', pitDepth_mm: 5 },
		});
		if (!made.ok) throw new Error(JSON.stringify(made.problem));
		serrated = lineDrawing(made.value.mesh, { axialHeight_mm: 46 });
	});

	it('the scale bar is as long as its number says, and the number is 1, 2 or 5 times a power of ten', () => {
		for (const width of [180, 333, 800, 1500]) {
			for (const scaled of [cone, lineDrawing(ellipticCone(1, 0.6, [0, 3.3, 0]), { axialHeight_mm: 3.3 })]) {
				const drawn = lineDrawingSvg(scaled, { width, height: 700, labels });
				const bar = barOf(drawn);
				const outline = boundsOf(drawn, 'side', 'outline');
				// the drawing's own scale, from the lines that stand on the page
				const pxPerMm = (outline.y1 - outline.y0) / (scaled.side.max[1] - scaled.side.min[1]);
				expect(Math.abs(bar.px / (bar.mm * pxPerMm) - 1)).toBeLessThan(width < 300 ? 0.003 : 0.001);
				expect(['1', '2', '5']).toContain(bar.mm.toExponential().split('e')[0]);
				expect(bar.px).toBeLessThanOrEqual(width * 0.3 + 0.01);
				expect(drawn).toContain(`>${bar.mm} mm</text>`);
			}
		}
	});

	it('draws all parts at one scale', () => {
		const { pxPerMm } = barOf(svg);
		for (const part of PARTS) {
			const box = boundsOf(svg, part, 'outline');
			const { min, max } = cone[part]!;
			expect(Math.abs((box.x1 - box.x0) / ((max[0] - min[0]) * pxPerMm) - 1)).toBeLessThan(0.001);
			expect(Math.abs((box.y1 - box.y0) / ((max[1] - min[1]) * pxPerMm) - 1)).toBeLessThan(0.001);
		}
	});

	it('keeps every part inside the picture and apart from the others, whatever its shape', () => {
		for (const [width, height] of [
			[800, 700],
			[1600, 500],
			[420, 900],
			[190, 330],
		]) {
			const drawn = lineDrawingSvg(cone, { width, height, labels });
			const boxes = PARTS.map((part) => boundsOf(drawn, part, 'outline'));
			for (const [i, a] of boxes.entries()) {
				expect(a.x0).toBeGreaterThan(0);
				expect(a.y0).toBeGreaterThan(0);
				expect(a.x1).toBeLessThan(width);
				expect(a.y1).toBeLessThan(barOf(drawn).y);
				for (const b of boxes.slice(i + 1))
					expect(a.x1 < b.x0 || b.x1 < a.x0 || a.y1 < b.y0 || b.y1 < a.y0).toBe(true);
			}
			expect(barOf(drawn).y).toBeLessThan(height);
		}
	});

	it('side and front stand at one height, the tip view under the side view where there is room below', () => {
		const upright = lineDrawingSvg(cone, { width: 420, height: 700, labels });
		const [side, front, tip] = PARTS.map((part) => boundsOf(upright, part, 'outline'));
		expect(Math.abs(front.y1 - side.y1)).toBeLessThan(0.3);
		expect(Math.abs(front.y0 - side.y0)).toBeLessThan(1);
		expect(tip.y0).toBeGreaterThan(side.y1);
		expect(tip.x0).toBeCloseTo(side.x0, 0);
		expect(tip.x1).toBeCloseTo(side.x1, 0);
	});

	it('hatches the cut face and nothing else', () => {
		expect(svg.match(/data-kind="hatch"/g)).toHaveLength(1);
		const [face, lines] = ['outline', 'hatch'].map((kind) => boundsOf(svg, 'section', kind));
		expect(lines.x0).toBeGreaterThanOrEqual(face.x0 - 0.1);
		expect(lines.x1).toBeLessThanOrEqual(face.x1 + 0.1);
		expect(lines.y1 - lines.y0).toBeGreaterThan((face.y1 - face.y0) * 0.8);
	});

	it('marks in side and front view where it is cut', () => {
		for (const part of ['side', 'front'] as const) {
			const [mark, outline] = ['mark', 'outline'].map((kind) => boundsOf(svg, part, kind));
			// the base stands at 0: the outline of a sharp tip ends a little short of it
			const cut = outline.y1 - 20 * barOf(svg).pxPerMm;
			expect(Math.abs((mark.y0 + mark.y1) / 2 - cut)).toBeLessThan(0.5);
			expect(mark.y1 - mark.y0).toBeLessThan(0.1);
		}
		const uncut = lineDrawingSvg({ ...cone, section: null }, { width: 800, height: 700, labels });
		expect(uncut).not.toContain('data-kind="mark"');
		expect(uncut).not.toContain('data-part="section"');
		expect(uncut).not.toContain('>Cut<');
	});

	it('says what it is, and is hidden from screen readers when nobody says it', () => {
		expect(svg).toContain('role="img"');
		expect(svg).toMatch(/<title>A tooth<\/title><desc>Its shape<\/desc>/);
		const silent = lineDrawingSvg(cone, { width: 300, height: 300 });
		expect(silent).toContain('aria-hidden="true"');
		expect(silent).not.toMatch(/role=|<title|<desc/);
		for (const label of Object.values(labels)) {
			expect(svg).toContain(`>${label}</text>`);
			expect(silent).not.toContain(`>${label}</text>`);
		}
	});

	it('lets no word break out of the picture', () => {
		const wild = '</text><script>alert("1")</script>&';
		const drawn = lineDrawingSvg(cone, {
			width: 500,
			height: 500,
			labels: { ...labels, side: wild },
			title: wild,
			desc: wild,
			scaleText: () => wild,
		});
		expect(drawn).not.toContain('<script');
		expect(drawn.match(/&lt;script&gt;alert\(&quot;1&quot;\)&lt;\/script&gt;&amp;/g)).toHaveLength(4);
	});

	it('can stand in a page more than once and takes its colour from there', () => {
		expect(svg).not.toMatch(/ (id|style|class|href)=/);
		expect(svg.match(/(?:stroke|fill)="[^"]*"/g)!.every((paint) => /"(none|currentColor)"/.test(paint))).toBe(
			true,
		);
	});

	it('is light even for a serrated tooth, and shows its serrations', () => {
		const drawn = lineDrawingSvg(serrated, { width: 900, height: 800, labels, title: 'x', desc: 'y' });
		expect(drawn.length).toBeLessThan(30_000);
		const outline = serrated.side.lines.find(({ kind }) => kind === 'outline')!.points;
		// along 40 mm of edge, 8 denticles in 5 mm: the outline swings to and fro at least a hundred times
		let swings = 0;
		for (let i = 2; i + 3 < outline.length; i += 2) {
			const [ax, ay] = [outline[i] - outline[i - 2], outline[i + 1] - outline[i - 1]];
			const [bx, by] = [outline[i + 2] - outline[i], outline[i + 3] - outline[i + 1]];
			if (ax * by - ay * bx < 0) swings++;
		}
		expect(swings).toBeGreaterThan(100);
	});

	it('breaks long words where the place is narrow, and leaves them out where they would crowd out the tooth', () => {
		const long = {
			side: 'De lado',
			front: 'Borde delantero',
			tip: 'Desde la punta',
			section: 'Corte a media altura',
		};
		const narrow = lineDrawingSvg(cone, { width: 190, height: 336, labels: long });
		expect(narrow).toMatch(
			/>Corte a <tspan x="[\d.]+" dy="[\d.]+">media altura<\/tspan>|>Corte a media <tspan x="[\d.]+" dy="[\d.]+">altura</,
		);
		const box = boundsOf(narrow, 'side', 'outline');
		expect(box.y1 - box.y0).toBeGreaterThan(90);
		const wide = lineDrawingSvg(cone, { width: 900, height: 700, labels: long });
		expect(wide).toContain('>Corte a media altura</text>');
		const thumb = lineDrawingSvg(cone, { width: 90, height: 120, labels: long });
		expect(thumb).not.toContain('Corte');
		expect(boundsOf(thumb, 'side', 'outline').y1 - boundsOf(thumb, 'side', 'outline').y0).toBeGreaterThan(25);
	});

	it('leaves out what does not fit at all rather than fail', () => {
		const tiny = lineDrawingSvg(cone, { width: 20, height: 10, labels });
		expect(tiny).toContain('</svg>');
		expect(tiny).not.toContain('NaN');
		expect(tiny).not.toContain('Infinity');
	});
});
