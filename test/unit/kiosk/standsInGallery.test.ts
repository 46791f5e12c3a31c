import { describe, expect, it } from 'vitest';
import { standsInGallery, type Standing } from '../../../src/lib/kiosk/standsInGallery';

const standing = (over: Partial<Standing> = {}): Standing => ({
	path: '/compare',
	screen: null,
	origin: 'http://localhost:4173',
	publicAddress: 'https://teeth.skerrow.example/table',
	shorterSide_px: 1080,
	framed: false,
	...over,
});

describe('standsInGallery', () => {
	it('is true for a large screen that nobody has set up', () => {
		expect(standsInGallery(standing())).toBe(true);
		expect(standsInGallery(standing({ publicAddress: null }))).toBe(true);
		expect(standsInGallery(standing({ publicAddress: 'no address' }))).toBe(true);
	});

	it('is false on a phone, and at the public address', () => {
		expect(standsInGallery(standing({ shorterSide_px: 390 }))).toBe(false);
		expect(standsInGallery(standing({ origin: 'https://teeth.skerrow.example' }))).toBe(false);
	});

	it('does what the address says of its screen', () => {
		expect(standsInGallery(standing({ screen: 'own' }))).toBe(false);
		expect(standsInGallery(standing({ screen: 'hall-2', shorterSide_px: 390 }))).toBe(true);
		expect(standsInGallery(standing({ screen: 'hall-2', origin: 'https://teeth.skerrow.example' }))).toBe(
			true,
		);
	});

	it('is never true for staff', () => {
		expect(standsInGallery(standing({ framed: true, screen: 'hall-2' }))).toBe(false);
		for (const path of ['/desk', '/desk/mark/skm-0104', '/status', '/styleguide'])
			expect(standsInGallery(standing({ path, screen: 'hall-2' })), path).toBe(false);
		expect(standsInGallery(standing({ path: '/desktop' }))).toBe(true);
	});
});
