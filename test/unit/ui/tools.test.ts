import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Component } from 'svelte';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { layOver } from '../../../src/lib/domain/compare/layOver';
import { cutSection } from '../../../src/lib/domain/measure/cutSection';
import { HandTools } from '../../../src/lib/kiosk/handTools.svelte';
import ScreenMeasure from '../../../src/lib/ui/desk/ScreenMeasure.svelte';
import CutPanel from '../../../src/lib/ui/tools/CutPanel.svelte';
import LaidOver from '../../../src/lib/ui/tools/LaidOver.svelte';
import SectionCard from '../../../src/lib/ui/tools/SectionCard.svelte';
import { ellipticCone } from '../mesh/shapes';
import ToolHost from './ToolHost.svelte';

const LANGUAGES = ['en', 'fr', 'es'] as const;
const words = Object.fromEntries(
	LANGUAGES.map((lang) => [
		lang,
		parse(readFileSync(path.resolve(__dirname, `../../../content/ui/${lang}.yaml`), 'utf8')) as Record<
			string,
			string
		>,
	]),
);

/** Markup and plain words of a component. */
function shown<P extends Record<string, unknown>>(
	part: Component<P>,
	props: P,
	lang: (typeof LANGUAGES)[number] = 'en',
	tools = new HandTools(),
): { body: string; text: string } {
	const { body } = render(ToolHost as unknown as Component, {
		props: { lang, ui: words[lang], tools, part, props },
	});
	const text = body
		.replace(/<!--[^]*?-->/g, '')
		.replace(/<[^>]+>/g, ' ')
		.replace(/\s+/g, ' ');
	return { body, text };
}

describe('the card of a section', () => {
	const section = cutSection(ellipticCone(6, 4, [0, 20, 0]))(10)!;
	const props = { section, side_mm: 8, labial: '+z' as const, number: 2 };

	it('tells area, length, width, their ratio and the shape, in three languages', () => {
		// half axes 3 and 2: area 6 pi = 18.8
		const english = shown(SectionCard, props).text;
		expect(english).toContain('Oval');
		expect(english).toMatch(/Area 18\.8 mm².*Length 6\.0 mm.*Width 4\.0 mm.*0\.67/);
		expect(shown(SectionCard, props, 'fr').text).toMatch(/Ovale.*Aire 18,8 mm²/);
		expect(shown(SectionCard, props, 'es').text).toMatch(/Ovalado.*Área 18,8 mm²/);
	});

	it('names the lip side only where it is known', () => {
		expect(shown(SectionCard, props).text).toContain('lip side');
		expect(shown(SectionCard, { ...props, labial: null }).text).not.toContain('lip side');
	});

	it('says when the cut passes by', () => {
		const { body, text } = shown(SectionCard, { ...props, section: null });
		expect(text).toContain('passes by this tooth');
		expect(body).not.toContain('<svg');
	});
});

describe('outlines laid over each other', () => {
	const tooth = (half: number, height: number) => ({
		axialHeight_mm: height,
		view: {
			min: [-half, 0] as [number, number],
			max: [half, height] as [number, number],
			lines: [{ kind: 'outline' as const, closed: true, points: [-half, 0, half, 0, 0, height] }],
			dots: [],
		},
	});
	const laid = layOver(tooth(6, 20), tooth(3, 10), 'true')!;

	it('tells what each has alone by hatching and by words', () => {
		const { body, text } = shown(LaidOver, { laid, numbers: [1, 3] as const, inMm: true });
		expect(text).toContain('25 % is covered by both');
		expect(text).toMatch(/only Tooth 1 .*only Tooth 3 .*both/);
		// three kinds of ground: two patterns and a plain one
		expect(body.match(/<pattern/g)!.length).toBeGreaterThanOrEqual(2);
		expect(body).toMatch(/aria-label="Outlines of Tooth 1 and Tooth 3/);
	});

	it('shows a scale bar at true scale only', () => {
		expect(shown(LaidOver, { laid, numbers: [1, 2] as const, inMm: true }).text).toMatch(/\d mm/);
		expect(shown(LaidOver, { laid, numbers: [1, 2] as const, inMm: false }).text).not.toMatch(/\d mm/);
	});
});

describe('the slider of the cut', () => {
	it('says where it cuts, below the base too', () => {
		const specimens = [
			{ shape: { crownHeight_mm: 20, bounds: { min: [-5, -18, -5], max: [5, 20, 5] } } },
		] as never;
		const tools = new HandTools();
		expect(shown(CutPanel, { specimens }, 'en', tools).text).toContain('50 % up the crown');
		tools.cutShare = -0.4;
		expect(shown(CutPanel, { specimens }, 'en', tools).text).toContain('40 % of the crown below its base');
		tools.cutBy = 'mm';
		tools.cutHeight_mm = 12.5;
		expect(shown(CutPanel, { specimens }, 'fr', tools).text).toContain('12,5 mm au-dessus de la base');
		expect(tools.cut).toEqual({ height_mm: 12.5 });
	});
});

describe('measuring the screen', () => {
	it('draws the card in its proportions and tells its size and standard', () => {
		for (const lang of LANGUAGES) {
			const { body, text } = shown(ScreenMeasure as Component<Record<string, unknown>>, {}, lang);
			expect(text).toMatch(/7810/);
			expect(text).toMatch(/85[.,]60 mm/);
			const [, width, height] = /width: ([\d.]+)px; height: ([\d.]+)px/.exec(body)!;
			// ISO/IEC 7810:2019, ID-1: 85.60 mm x 53.98 mm
			expect(Number(width) / Number(height)).toBeCloseTo(85.6 / 53.98, 3);
		}
	});
});

describe('tools in hand', () => {
	it('one at a time; taken again it is laid down', () => {
		const tools = new HandTools();
		tools.take('cut');
		tools.take('caliper');
		expect(tools.active).toBe('caliper');
		tools.take('caliper');
		expect(tools.active).toBeNull();
	});

	it('keeps what is told of each place until it is taken back', () => {
		const tools = new HandTools();
		tools.tellReading(4, { length_mm: 3, precision_mm: 0.1, decimals: 1 });
		tools.tellSection(4, null);
		expect(tools.readings[4].length_mm).toBe(3);
		expect(4 in tools.sections).toBe(true);
		tools.tellReading(4, undefined);
		tools.tellSection(4, undefined);
		expect(tools.readings).toEqual({});
		expect(4 in tools.sections).toBe(false);
	});
});
