import { readFileSync } from 'node:fs';
import path from 'node:path';
import { render } from 'svelte/server';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { SpecimenView } from '../../../../src/lib/content/view';
import { TrayFilter } from '../../../../src/lib/ui/table/trayFilter.svelte';
import TrayHost from './TrayHost.svelte';

const ui = parse(readFileSync(path.resolve(__dirname, '../../../../content/ui/en.yaml'), 'utf8')) as Record<
	string,
	string
>;
const ANIMALS = ['mosasaurus', 'globidens', 'gharial'];
const PARTS = ['shed-crown', 'rooted-tooth', 'germ'];

/** The drawer uses nothing of a specimen but what it shows and sorts by. */
const drawer = (count: number): SpecimenView[] =>
	Array.from(
		{ length: count },
		(_, i) =>
			({
				id: `tooth-${i}`,
				title: `Tooth number ${i}`,
				part: PARTS[i % 3],
				group: { id: ANIMALS[i % ANIMALS.length], name: ANIMALS[i % ANIMALS.length], living: i % 3 === 2 },
				bed: i % 3 === 2 ? null : { id: 'marl', name: 'The marl' },
				shape: { pictureUrl: `/pictures/${i}.webp` },
			}) as unknown as SpecimenView,
	);
const tray = (specimens: SpecimenView[], filter: TrayFilter, places: (string | null)[] = []) =>
	render(TrayHost, {
		props: { ui, specimens, uses: {}, filter, places, next: 0, onpick: () => undefined },
	}).body;
const tiles = (html: string) => [...html.matchAll(/data-specimen="([^"]+)"/g)].map((match) => match[1]);

describe('Tray', () => {
	it('shows every tooth once, with its picture fetched only when it comes into sight', () => {
		const html = tray(drawer(300), new TrayFilter());
		expect(tiles(html)).toHaveLength(300);
		expect(new Set(tiles(html)).size).toBe(300);
		expect([...html.matchAll(/<img[^>]*loading="lazy"/g)]).toHaveLength(300);
		expect(html).toContain('300 teeth of 300');
	});

	it('is one stop of Tab, however many teeth there are', () => {
		const html = tray(drawer(300), new TrayFilter());
		expect([...html.matchAll(/<button[^>]*data-specimen[^>]*tabindex="0"/g)]).toHaveLength(1);
		expect([...html.matchAll(/<button[^>]*data-specimen[^>]*tabindex="-1"/g)]).toHaveLength(299);
	});

	it('says which teeth lie on the table, and where the next one goes', () => {
		const html = tray(drawer(5), new TrayFilter(), ['tooth-3', null]);
		expect(html).toMatch(/aria-pressed="true"[^>]*aria-label="Tooth number 3: lies in place 1"/);
		expect(html).toContain('aria-label="Tooth number 0: lay it in place 1"');
	});

	it('is sorted by what is wanted, and says so when nothing is like that', () => {
		const filter = new TrayFilter();
		filter.toggle('animal', 'gharial');
		const html = tray(drawer(30), filter);
		expect(tiles(html)).toHaveLength(10);
		expect(html).toContain('10 teeth of 30');
		expect(html).toContain('Show all');
		filter.toggle('found', 'marl');
		expect(tiles(tray(drawer(30), filter))).toHaveLength(0);
		expect(tray(drawer(30), filter)).toContain('No tooth is like that. Clear one filter.');
		filter.clear('found');
		expect(tiles(tray(drawer(30), filter))).toHaveLength(10);
		filter.clear();
		expect(filter.active).toEqual([]);
		expect(tiles(tray(drawer(30), filter))).toHaveLength(30);
	});

	it('leaves out what all teeth have in common', () => {
		const alike = drawer(30).filter(({ part }) => part === 'germ');
		const names = [...tray(alike, new TrayFilter()).matchAll(/aria-expanded="false"/g)];
		expect(names).toHaveLength(0);
	});
});
