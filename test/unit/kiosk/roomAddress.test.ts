import { describe, expect, it } from 'vitest';
import { languageFolder } from '../../../src/lib/kiosk/languageFolder';
import { roomAddress, roomPath } from '../../../src/lib/kiosk/roomAddress';

describe('roomAddress', () => {
	it('tells a server the language', () => {
		expect(roomAddress('/compare', 'fr', null)).toBe('/compare?lang=fr');
		expect(roomAddress('/compare?teeth=a,b', 'en', null)).toBe('/compare?teeth=a,b&lang=en');
	});

	it('leads to the folder of a language where the exhibit is files', () => {
		expect(roomAddress('/', 'en', 'en')).toBe('/');
		expect(roomAddress('/', 'fr', 'en')).toBe('/fr/');
		expect(roomAddress('/compare', 'en', 'en')).toBe('/compare/');
		expect(roomAddress('/quiz/sheet?code=123456', 'fr', 'en')).toBe('/fr/quiz/sheet/?code=123456');
	});
});

describe('roomPath', () => {
	it('is the way back', () => {
		const languages = ['en', 'fr', 'es'];
		for (const path of ['/', '/compare', '/quiz/sheet'])
			for (const lang of languages) expect(roomPath(roomAddress(path, lang, 'en'), languages)).toBe(path);
		expect(roomPath('/desk/mark/a', [])).toBe('/desk/mark/a');
		expect(roomPath('/fresh', languages)).toBe('/fresh');
	});
});

describe('languageFolder', () => {
	it('knows a language’s folder from a room', () => {
		expect(languageFolder('/fr/compare/')).toBe('fr');
		expect(languageFolder('/fr')).toBe('fr');
		expect(languageFolder('/pt-br/')).toBe('pt-br');
		for (const path of ['/', '/compare', '/quiz/sheet', '/feeding/', '/desk', '/live', '/_app/x', '/frog/'])
			expect(languageFolder(path), path).toBe(null);
	});
});
