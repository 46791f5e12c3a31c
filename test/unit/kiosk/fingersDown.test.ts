import { describe, expect, it } from 'vitest';
import { fingersDown } from '../../../src/lib/kiosk/fingersDown';

describe('fingersDown', () => {
	it('counts the fingers on the glass and the time since the last was lifted', () => {
		const target = new EventTarget();
		let now_ms = 1000;
		const fingers = fingersDown(target as Window, () => now_ms);
		const send = (type: string, pointerId: number) =>
			target.dispatchEvent(Object.assign(new Event(type), { pointerId }));
		expect([fingers.count(), fingers.sinceLifted_ms()]).toEqual([0, Infinity]);
		send('pointerdown', 1);
		send('pointerdown', 2);
		expect(fingers.count()).toBe(2);
		send('pointerup', 1);
		send('pointercancel', 2);
		// a mouse that moved in from outside
		send('pointerup', 3);
		now_ms = 1250;
		expect([fingers.count(), fingers.sinceLifted_ms()]).toEqual([0, 250]);
		send('pointerdown', 4);
		target.dispatchEvent(new Event('blur'));
		expect(fingers.count()).toBe(0);
		fingers.stop();
		send('pointerdown', 5);
		expect(fingers.count()).toBe(0);
	});
});
