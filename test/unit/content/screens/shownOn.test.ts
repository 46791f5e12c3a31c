import { describe, expect, it } from 'vitest';
import type { Exhibit } from '../../../../src/lib/content/exhibit';
import { cleanScreenName, shownOn } from '../../../../src/lib/content/screens/shownOn';

const WALL = { diagonal_in: 32, width_px: 1920, height_px: 1080 };
const exhibit: Pick<Exhibit, 'rooms' | 'screen' | 'languages' | 'screens'> = {
	rooms: ['compare', 'feeding', 'quiz'],
	screen: WALL,
	languages: [
		{ code: 'en', name: 'English' },
		{ code: 'fr', name: 'Français' },
		{ code: 'es', name: 'Español' },
	],
	screens: [
		{
			id: 'table',
			title: 'Table',
			rooms: ['quiz', 'compare'],
			screen: { ...WALL, diagonal_in: 24 },
			firstLanguage: 'fr',
			volumePercent: 40,
			reach: 'low',
			printer: false,
			reloadAt_min: 180,
		},
		{ id: 'old', title: 'Old', rooms: ['talks'] },
	],
};

describe('shownOn', () => {
	it('gives a screen what it was set up with', () => {
		const shown = shownOn(exhibit, 'table');
		expect(shown.rooms).toEqual(['quiz', 'compare']);
		expect(shown.screen.diagonal_in).toBe(24);
		expect(shown.languages.map(({ code }) => code)).toEqual(['fr', 'en', 'es']);
		expect(shown.here).toEqual({
			name: 'table',
			known: true,
			gain: 0.4,
			lowReach: true,
			printer: false,
			hours: null,
			reloadAt_min: 180,
			staysLit_min: 10,
		});
	});

	it('gives every other screen what exhibit.yaml says, and tells a name that nobody set up', () => {
		for (const name of [null, 'somewhere']) {
			const shown = shownOn(exhibit, name);
			expect(shown.rooms).toBe(exhibit.rooms);
			expect(shown.screen).toBe(WALL);
			expect(shown.languages).toEqual(exhibit.languages);
			expect(shown.here).toMatchObject({ name, known: name === null, gain: 1, printer: true });
		}
		expect(shownOn({ ...exhibit, screens: undefined }, 'table').here.known).toBe(false);
	});

	it('shows all rooms where none of its own is left', () => {
		expect(shownOn(exhibit, 'old').rooms).toEqual(exhibit.rooms);
	});
});

describe('cleanScreenName', () => {
	it('lets names pass and nothing else', () => {
		expect(cleanScreenName('gallery-wall-2')).toBe('gallery-wall-2');
		for (const said of [null, undefined, '', 'Wall', 'a b', '../x', '-a', 'x'.repeat(61)])
			expect(cleanScreenName(said)).toBeNull();
	});
});
