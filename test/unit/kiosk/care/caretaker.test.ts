import { describe, expect, it } from 'vitest';
import type { ScreenBeat } from '../../../../src/lib/content/screens/beat';
import type { ScreenHere } from '../../../../src/lib/content/screens/shownOn';
import { Caretaker } from '../../../../src/lib/kiosk/care/caretaker.svelte';
import type { IdleState } from '../../../../src/lib/kiosk/idle.svelte';

const HERE: ScreenHere = {
	name: 'wall',
	known: true,
	gain: 1,
	lowReach: false,
	printer: true,
	// Tuesdays, nine to six
	hours: [{ days: ['tue'], from_min: 540, dimFrom_min: 1020, until_min: 1080 }],
	reloadAt_min: 240,
	staysLit_min: 10,
};

/** A screen whose clocks move only when told. */
function screen(clock: string, over: { here?: Partial<ScreenHere>; serverAway?: boolean } = {}) {
	let now_ms = 5_000;
	let wall_ms = new Date(clock).getTime();
	let tick = () => undefined as void;
	const seen = { idle: 'awake' as IdleState, atStart: true, losses: 0, away: over.serverAway ?? false };
	const beats: ScreenBeat[] = [];
	let reloads = 0;
	const care = new Caretaker({
		here: () => ({ ...HERE, ...over.here }),
		idle: () => seen.idle,
		atStart: () => seen.atStart,
		now: () => now_ms,
		clock: () => new Date(wall_ms),
		every(_period, call) {
			tick = call;
			return () => (tick = () => undefined);
		},
		jitter_min: 0,
		losses: () => seen.losses,
		figures: () => ({
			page: 'a'.repeat(16),
			room: 'start',
			exhibit: null,
			version: '1',
			frames: null,
			quality: 1,
			heap_MB: null,
			geometries: 0,
			textures: 0,
			contexts: 1,
			losses: seen.losses,
		}),
		send: (beat) => beats.push(beat),
		reload() {
			reloads += 1;
			return Promise.resolve(!seen.away);
		},
	});
	const end = care.watch();
	return {
		care,
		seen,
		beats,
		end,
		reloads: () => reloads,
		async pass(seconds: number) {
			for (let s = 0; s < seconds; s++) {
				now_ms += 1000;
				wall_ms += 1000;
				tick();
				// promises of the page come to their end as well
				if (s % 5 === 0) for (let i = 0; i < 5; i++) await Promise.resolve();
			}
			await Promise.resolve();
			await Promise.resolve();
		},
		/** the page stands still for so long, then goes on */
		stand(seconds: number) {
			now_ms += seconds * 1000;
			wall_ms += seconds * 1000;
			tick();
		},
		setClock: (to: string) => void (wall_ms = new Date(to).getTime()),
	};
}

describe('Caretaker', () => {
	it('beats at once, every half minute, when the page is hidden, and a last time', async () => {
		const { care, beats, pass, end } = screen('2026-03-10T12:00:00');
		expect(beats).toHaveLength(1);
		await pass(91);
		expect(beats).toHaveLength(4);
		expect(beats[3]).toMatchObject({ name: 'wall', uptime_s: 95, state: 'awake', touched_min: null });
		care.touched();
		care.hide(true);
		expect(beats[4]).toMatchObject({ hidden: true, leaving: false, touched_min: 1 });
		care.leave();
		expect(beats[5]).toMatchObject({ leaving: true });
		end();
		await pass(120);
		expect(beats).toHaveLength(6);
	});

	it('says at once that it is back when it has stood still', async () => {
		const { beats, pass, stand } = screen('2026-03-10T12:00:00');
		await pass(3);
		expect(beats).toHaveLength(1);
		stand(18);
		expect(beats).toHaveLength(2);
		await pass(25);
		expect(beats).toHaveLength(2);
		stand(3);
		expect(beats).toHaveLength(2);
	});

	it('tells how often the page failed, and keeps what an address held to itself', async () => {
		const { care, beats, pass } = screen('2026-03-10T12:00:00');
		care.failed('Failed to load http://localhost/compare?teeth=a&screen=wall (504)');
		care.failed(`x${'y'.repeat(400)}`);
		await pass(31);
		expect(beats.at(-1)!.errors.count).toBe(2);
		expect(beats.at(-1)!.errors.last).toHaveLength(200);
		care.failed('Failed to load http://localhost/compare?teeth=a (504)');
		await pass(31);
		expect(beats.at(-1)!.errors.last).toBe('Failed to load http://localhost/compare (504)');
	});

	it('grows dim and dark by the hours, and never under a visitor’s fingers', async () => {
		const { care, seen, pass, beats } = screen('2026-03-10T16:59:00');
		care.touched();
		seen.idle = 'resting';
		await pass(61);
		expect([care.plan, care.dark]).toEqual(['dim', false]);
		await pass(31);
		expect(beats.at(-1)!.state).toBe('dim');
		seen.idle = 'awake';
		seen.atStart = false;
		await pass(3600);
		expect([care.plan, care.dark]).toEqual(['dark', false]);
		seen.idle = 'resting';
		await pass(1);
		expect(care.dark).toBe(true);
	});

	it('is lit by a touch after hours for as long as the settings say', async () => {
		const { care, seen, pass, beats } = screen('2026-03-10T20:00:00');
		// loaded after hours: dark without waiting
		expect(care.dark).toBe(true);
		care.touched();
		expect(care.dark).toBe(false);
		seen.idle = 'awake';
		await pass(120);
		seen.idle = 'resting';
		await pass(470);
		expect(care.dark).toBe(false);
		await pass(15);
		expect(care.dark).toBe(true);
		await pass(31);
		expect(beats.at(-1)!.state).toBe('dark');
	});

	it('bears a clock that jumps: what it shows now holds, and nothing is done twice', async () => {
		const { care, seen, pass, setClock, reloads } = screen('2026-03-10T12:00:00');
		care.touched();
		seen.idle = 'resting';
		await pass(700);
		setClock('2026-03-10T23:00:00');
		await pass(1);
		expect(care.dark).toBe(true);
		setClock('2026-03-10T12:10:00');
		await pass(1);
		expect([care.dark, care.plan]).toEqual([false, 'lit']);
		setClock('2031-01-01T04:30:00');
		await pass(60);
		setClock('2026-03-10T12:12:00');
		await pass(60);
		expect(reloads()).toBe(0);
	});

	it('loads the page anew at night, only while nobody is there', async () => {
		const { care, seen, pass, reloads } = screen('2026-03-11T02:50:00', { here: { hours: null } });
		care.touched();
		seen.atStart = false;
		await pass(2 * 3600);
		expect(reloads()).toBe(0);
		seen.idle = 'resting';
		await pass(1);
		expect(reloads()).toBe(1);
	});

	it('tries a reload again after a minute while the server is away', async () => {
		const { seen, pass, reloads } = screen('2026-03-10T12:00:00', { serverAway: true });
		seen.idle = 'resting';
		seen.losses = 3;
		await pass(290);
		expect(reloads()).toBe(0); // too soon after the last load
		await pass(200);
		expect(reloads()).toBeGreaterThanOrEqual(3);
		expect(reloads()).toBeLessThanOrEqual(4);
	});

	it('follows an order to restart at once, or when the finger has gone, or after a minute', async () => {
		const quiet = screen('2026-03-10T12:00:00');
		quiet.seen.atStart = false;
		quiet.care.restart();
		expect(quiet.reloads()).toBe(1);

		const busy = screen('2026-03-10T12:00:00');
		busy.care.touched();
		busy.care.restart();
		await busy.pass(10);
		expect(busy.reloads()).toBe(0);
		await busy.pass(6);
		expect(busy.reloads()).toBe(1);

		const played = screen('2026-03-10T12:00:00');
		played.care.touched();
		played.care.restart();
		for (let s = 0; s < 50; s += 5) {
			await played.pass(5);
			played.care.touched();
		}
		expect(played.reloads()).toBe(0);
		await played.pass(11);
		expect(played.reloads()).toBe(1);
	});
});
