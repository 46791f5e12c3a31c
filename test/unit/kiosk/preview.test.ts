import { describe, expect, it } from 'vitest';
import type { SpecimenView } from '../../../src/lib/content/view';
import { Preview, PREVIEW_READY, PREVIEW_SHOW } from '../../../src/lib/kiosk/preview.svelte';

const view = (id: string, title: string) => ({ id, title }) as SpecimenView;
const ALL = [view('a', 'A'), view('b', 'B')];
const ORIGIN = 'http://localhost:4173';

function framed() {
	const said: unknown[] = [];
	const parent = { postMessage: (message: unknown, origin: string) => void said.push([message, origin]) };
	let listener: ((event: MessageEvent) => void) | null = null;
	const frame = {
		parent,
		location: { origin: ORIGIN },
		addEventListener: (_: 'message', call: (event: MessageEvent) => void) => (listener = call),
		removeEventListener: () => (listener = null),
	};
	const hear = (data: unknown, origin = ORIGIN, source: unknown = parent) =>
		listener?.({ data, origin, source } as MessageEvent);
	return { frame, said, hear, heard: () => listener !== null };
}

describe('Preview', () => {
	it('shows what the desk sends in the place of the same specimen, and first where there is none', () => {
		const preview = new Preview();
		const { frame, said, hear } = framed();
		preview.listen(frame);
		expect(said).toEqual([[{ kind: PREVIEW_READY }, ORIGIN]]);
		expect(preview.over(ALL)).toBe(ALL);
		hear({ kind: PREVIEW_SHOW, view: view('b', 'Typed') });
		expect(preview.over(ALL).map(({ title }) => title)).toEqual(['A', 'Typed']);
		hear({ kind: PREVIEW_SHOW, view: view('c', 'New') });
		expect(preview.over(ALL).map(({ title }) => title)).toEqual(['New', 'A', 'B']);
		hear({ kind: PREVIEW_SHOW, view: null });
		expect(preview.over(ALL)).toBe(ALL);
	});

	it('hears nobody else, and nothing at all where it is a page by itself', () => {
		const preview = new Preview();
		const { frame, hear, heard } = framed();
		const stop = preview.listen(frame);
		const message = { kind: PREVIEW_SHOW, view: view('a', 'Forged') };
		hear(message, 'http://elsewhere.example');
		hear(message, ORIGIN, {});
		hear({ kind: 'other', view: view('a', 'Forged') });
		hear(null);
		expect(preview.over(ALL)).toBe(ALL);
		stop();
		expect(heard()).toBe(false);

		const alone = framed();
		Object.assign(alone.frame, { parent: alone.frame });
		new Preview().listen(alone.frame);
		expect(alone.heard()).toBe(false);
	});
});
