import { describe, expect, it } from 'vitest';
import type { ScreenBeat } from '../../../../src/lib/content/screens/beat';
import {
	createScreenRegistry,
	HUNG_AFTER_s,
	LATE_AFTER_s,
	MOST_SCREENS,
} from '../../../../src/lib/server/screens/screenRegistry';
import { beat } from './beat';

function room() {
	let now_ms = 1_000;
	const told: string[] = [];
	const seen: string[] = [];
	const registry = createScreenRegistry({
		now: () => now_ms,
		onChange: ({ key, health }, what) => {
			if (what !== 'beat') seen.push(`${key} ${what === 'health' ? health : what}`);
		},
	});
	return {
		registry,
		told,
		seen,
		listen: (name: string | null, page: string) => registry.listen(name, page, () => told.push(name ?? page)),
		pass(seconds: number) {
			for (let s = 0; s < seconds; s += 5) {
				now_ms += 5_000;
				registry.tick();
			}
		},
		say: (over: Partial<ScreenBeat> = {}) => registry.beat(beat(over)),
		one: (key: string) => registry.list().find((screen) => screen.key === key),
	};
}

describe('screenRegistry', () => {
	it('keeps the last word of each screen, and how old it is', () => {
		const { say, one, pass } = room();
		say({ name: 'wall', room: 'quiz' });
		pass(20);
		say({ name: 'table' });
		pass(10);
		expect(one('wall')).toMatchObject({ health: 'well', age_s: 30, hangs: 0, twice: false });
		expect(one('wall')!.beat.room).toBe('quiz');
		expect(one('table')!.age_s).toBe(10);
	});

	it('asks a screen that misses its beats to restart, once, and calls it hung when that does not help', () => {
		const { say, one, pass, listen, told, seen } = room();
		listen('wall', 'a'.repeat(16));
		listen('table', 'b'.repeat(16));
		say({ name: 'wall' });
		pass(LATE_AFTER_s - 5);
		expect(one('wall')!.health).toBe('well');
		pass(10);
		expect(one('wall')).toMatchObject({ health: 'late', restarting: true });
		expect(told).toEqual(['wall']);
		pass(HUNG_AFTER_s - LATE_AFTER_s);
		expect(one('wall')).toMatchObject({ health: 'hung', hangs: 1 });
		expect(told).toEqual(['wall']);
		say({ name: 'wall', page: 'c'.repeat(16) });
		expect(one('wall')).toMatchObject({ health: 'well', hangs: 1, restarting: false });
		expect(seen).toEqual(['wall late', 'wall hung', 'wall well']);
	});

	it('notices a screen whose connection for updates is gone as well', () => {
		const { say, one, pass, listen, told } = room();
		listen('wall', 'a'.repeat(16))();
		say({ name: 'wall' });
		pass(HUNG_AFTER_s + 10);
		expect(one('wall')).toMatchObject({ health: 'hung', reachable: false });
		expect(told).toEqual([]);
	});

	it('believes a worker that says that its page stands still, until the page beats again', () => {
		const { registry, say, one, pass } = room();
		say({ name: 'wall' });
		registry.hung('wall', 'f'.repeat(16)); // a page that is not there any more
		expect(one('wall')!.health).toBe('well');
		registry.hung('wall', beat().page);
		expect(one('wall')).toMatchObject({ health: 'hung', hangs: 1 });
		pass(30);
		expect(one('wall')!.health).toBe('hung');
		say({ name: 'wall' });
		expect(one('wall')!.health).toBe('well');
		registry.hung('nobody', beat().page);
	});

	it('waits longer for a hidden page, and not at all for a closed one', () => {
		const { say, one, pass } = room();
		say({ name: 'wall', hidden: true });
		pass(HUNG_AFTER_s + 60);
		expect(one('wall')!.health).toBe('well');
		pass(3 * HUNG_AFTER_s);
		expect(one('wall')!.health).toBe('hung');
		say({ name: 'wall' });
		say({ name: 'wall', leaving: true });
		pass(2 * HUNG_AFTER_s);
		expect(one('wall')!.health).toBe('closed');
	});

	it('tells the named screen alone, and says whether anybody heard', () => {
		const { registry, listen, told, say, one } = room();
		listen('wall', 'a'.repeat(16));
		listen('table', 'b'.repeat(16));
		say({ name: 'wall' });
		expect(registry.restart('wall')).toBe(true);
		expect(told).toEqual(['wall']);
		expect(one('wall')!.restarting).toBe(true);
		expect(registry.restart('nobody')).toBe(false);
	});

	it('notices two pages that share a name, and a reload is not that', () => {
		const { say, one, pass } = room();
		const [a, b] = ['a'.repeat(16), 'b'.repeat(16)];
		say({ name: 'wall', page: a });
		pass(5);
		say({ name: 'wall', page: a, leaving: true });
		say({ name: 'wall', page: b });
		expect(one('wall')).toMatchObject({ twice: false, health: 'well' });
		pass(30);
		say({ name: 'wall', page: a });
		expect(one('wall')!.twice).toBe(true);
		pass(600);
		say({ name: 'wall', page: a });
		expect(one('wall')!.twice).toBe(false);
	});

	it('forgets after a day, a page without a name sooner, and never knows more than it can hold', () => {
		const { say, one, pass, registry, seen } = room();
		say({ name: null, page: 'a'.repeat(16) });
		say({ name: 'wall' });
		pass(900);
		expect(one('a'.repeat(16))).toBeUndefined();
		expect(one('wall')!.health).toBe('hung');
		pass(24 * 3600);
		expect(registry.list()).toEqual([]);
		expect(seen).toContain('wall forgotten');
		for (let i = 0; i < MOST_SCREENS + 20; i++) say({ name: `screen-${i}` });
		expect(registry.list()).toHaveLength(MOST_SCREENS);
		expect(one(`screen-${MOST_SCREENS + 19}`)).toBeDefined();
	});
});
