import { describe, expect, it } from 'vitest';
import { mayTake } from '../../../src/lib/kiosk/mayTake';

const a = `/shapes/${'a'.repeat(64)}.glb`;
const hash = (letter: string) => letter.repeat(64);
const still = { fingers: 0, sinceLifted_ms: Infinity, atWork: true, shown: [a] };

describe('mayTake', () => {
	it('takes new words at once while the teeth in front of a visitor stay', () => {
		expect(mayTake([hash('a'), hash('b')], still)).toBe(true);
		expect(mayTake([], { ...still, shown: [] })).toBe(true);
	});

	it('waits while a finger lies on the glass, and a moment longer', () => {
		expect(mayTake([hash('a')], { ...still, fingers: 1 })).toBe(false);
		expect(mayTake([hash('a')], { ...still, sinceLifted_ms: 100 })).toBe(false);
		expect(mayTake([hash('a')], { ...still, sinceLifted_ms: 400 })).toBe(true);
		expect(mayTake([], { ...still, atWork: false, fingers: 2 })).toBe(false);
	});

	it('waits while a tooth that is gone or became another lies in front of a visitor', () => {
		expect(mayTake([hash('b')], still)).toBe(false);
		expect(mayTake([hash('b')], { ...still, shown: [] })).toBe(true);
		expect(mayTake([hash('b')], { ...still, atWork: false })).toBe(true);
	});
});
