import { describe, expect, it } from 'vitest';
import { USE_STEPS, useRoom, type UseRoom } from '../../../src/lib/domain/use/useFacts';
import { LOOKING_ms, UseWatch, type UseCounts } from '../../../src/lib/kiosk/useWatch';

/** A watch on a clock of its own. */
function watching(room: UseRoom = 'start') {
	const sent: UseCounts[] = [];
	let now = 5_000_000;
	const watch = new UseWatch({ now: () => now, send: (counts) => void sent.push(counts) });
	const go = (to: UseRoom, teeth: readonly string[] | null = null, step: string | null = null) =>
		watch.here({ room: to, step, teeth });
	go(room);
	return {
		watch,
		sent,
		go,
		/** so many seconds, with a touch at their end */
		touchAfter(seconds: number) {
			now += seconds * 1000;
			watch.touched();
		},
		pass: (seconds: number) => (now += seconds * 1000),
	};
}

describe('useWatch', () => {
	it('counts nothing on a screen that nobody touches, whatever it shows', () => {
		const { watch, sent, go, pass } = watching();
		pass(3600);
		go('compare', ['a', 'b']);
		pass(3600);
		go('start');
		watch.choseLanguage('fr');
		watch.set('low-layout');
		watch.end('reset');
		watch.end('closed');
		expect(sent).toEqual([]);
	});

	it('a visit: what each room held, for how long, and where it was left; once', () => {
		const { watch, sent, go, touchAfter } = watching();
		touchAfter(100);
		touchAfter(8);
		go('compare');
		go('compare', ['a', 'b']);
		for (let i = 0; i < 4; i += 1) touchAfter(10);
		go('compare', ['a', 'c']);
		touchAfter(12);
		watch.choseLanguage('fr');
		watch.choseLanguage('es');
		watch.choseLanguage('fr');
		watch.set('text-largest');
		watch.end('reset');
		expect(sent).toEqual([
			{ rooms: [{ room: 'start', dwell: 'under-10s' }], teeth: [], left: [], languages: [], settings: [] },
			{
				rooms: [{ room: 'compare', dwell: '30-60s' }],
				teeth: [
					{ room: 'compare', specimen: 'a', laid: false, dwell: '30-60s' },
					{ room: 'compare', specimen: 'b', laid: false, dwell: '30-60s' },
					{ room: 'compare', specimen: 'c', laid: true, dwell: '10-30s' },
				],
				left: [{ room: 'compare', step: 'table', by: 'reset' }],
				languages: ['es', 'fr'],
				settings: ['text-largest'],
			},
		]);
		watch.end('reset');
		watch.end('closed');
		expect(sent).toHaveLength(2);
	});

	it('an abandoned screen does not dwell: after a touch somebody looks for 50 s at most, and after the last not at all', () => {
		const left = watching('feeding');
		left.touchAfter(0);
		left.touchAfter(5);
		left.pass(125);
		left.watch.end('reset');
		expect(left.sent[0].rooms).toEqual([{ room: 'feeding', dwell: 'under-10s' }]);

		const reading = watching('feeding');
		reading.touchAfter(0);
		// read for 45 s, away for ten minutes, then somebody comes back
		reading.touchAfter(45);
		reading.touchAfter(600);
		reading.watch.end('reset');
		expect(45 + LOOKING_ms / 1000).toBeLessThan(120);
		expect(reading.sent[0].rooms).toEqual([{ room: 'feeding', dwell: '1-2min' }]);
	});

	it('a clock that jumps forward or back costs nobody a visit', () => {
		const { watch, sent, touchAfter } = watching('quiz');
		touchAfter(0);
		touchAfter(20);
		touchAfter(-4000);
		touchAfter(15);
		watch.end('reset');
		expect(sent[0].rooms).toEqual([{ room: 'quiz', dwell: '30-60s' }]);
	});

	it('a page that is closed was looked at until then', () => {
		const { watch, sent, touchAfter, pass } = watching('compare');
		touchAfter(0);
		pass(31);
		watch.end('closed');
		expect(sent[0].rooms).toEqual([{ room: 'compare', dwell: '30-60s' }]);
		expect(sent[0].left).toEqual([{ room: 'compare', step: 'table', by: 'closed' }]);
	});

	it('says at which step a room was left', () => {
		const { watch, sent, go, touchAfter } = watching('quiz');
		touchAfter(0);
		go('quiz', null, 'question');
		touchAfter(3);
		watch.end('reset');
		expect(sent[0].left).toEqual([{ room: 'quiz', step: 'question', by: 'reset' }]);
	});

	it('the next visit has nothing of the one before', () => {
		const { watch, sent, go, touchAfter } = watching();
		touchAfter(1);
		go('compare', ['a', 'b']);
		touchAfter(40);
		watch.set('calm');
		watch.end('reset');
		go('start');
		touchAfter(4000);
		watch.end('reset');
		expect(sent.at(-1)).toEqual({
			rooms: [{ room: 'start', dwell: 'under-10s' }],
			teeth: [],
			left: [{ room: 'start', step: 'choosing', by: 'reset' }],
			languages: [],
			settings: [],
		});
	});

	it('however many teeth are laid, a sending is one that the server takes', () => {
		const { watch, sent, go, touchAfter } = watching('compare');
		touchAfter(0);
		for (let i = 0; i < 90; i += 1) go('compare', [`t${i}`]);
		watch.end('reset');
		expect(sent[0].teeth).toHaveLength(60);
	});
});

describe('useRoom', () => {
	it('knows the visitor’s rooms and no page of staff', () => {
		expect(['/', '/compare', '/quiz/sheet', '/feeding'].map(useRoom)).toEqual([
			'start',
			'compare',
			'quiz',
			'feeding',
		]);
		expect(['/desk', '/status', '/desk/use', '/comparer', '/healthz'].map(useRoom)).toEqual(
			Array(5).fill(null),
		);
		expect(
			Object.values(USE_STEPS)
				.flat()
				.every((step) => /^[a-z-]+$/.test(step)),
		).toBe(true);
	});
});
