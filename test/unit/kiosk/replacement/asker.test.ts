import { describe, expect, it } from 'vitest';
import { Asker } from '../../../../src/lib/kiosk/replacement/asker';

/** A worker that answers when told to. */
class Slow {
	asked: { id: number; what: string }[] = [];
	closed = false;
	#listener: ((event: { data: unknown }) => void) | null = null;
	postMessage(data: { id: number; what: string }) {
		this.asked.push(data);
	}
	addEventListener(_type: string, listener: (event: { data: unknown }) => void) {
		this.#listener = listener;
	}
	answer(id: number) {
		this.#listener?.({ data: { id, answer: `answer ${id}` } });
	}
	terminate() {
		this.closed = true;
	}
}

function asker() {
	const slow = new Slow();
	let made = 0;
	const desk = new Asker<{ what: string }, string>(() => {
		made += 1;
		return slow as unknown as Worker;
	});
	return { slow, desk, made: () => made };
}

describe('Asker', () => {
	it('makes its worker with the first question only', async () => {
		const { slow, desk, made } = asker();
		expect(made()).toBe(0);
		const first = desk.ask({ what: 'a' });
		slow.answer(1);
		expect(await first).toBe('answer 1');
		void desk.ask({ what: 'b' });
		expect(made()).toBe(1);
	});

	it('drops what was asked between the one at work and the newest', async () => {
		const { slow, desk } = asker();
		const answers = ['a', 'b', 'c'].map((what) => desk.ask({ what }));
		expect(slow.asked.map(({ what }) => what)).toEqual(['a']);
		slow.answer(1);
		slow.answer(2);
		expect(await Promise.all(answers)).toEqual(['answer 1', null, 'answer 2']);
		expect(slow.asked.map(({ what }) => what)).toEqual(['a', 'c']);
	});

	it('tells everyone who waits when it closes', async () => {
		const { slow, desk } = asker();
		const answers = [desk.ask({ what: 'a' }), desk.ask({ what: 'b' })];
		desk.close();
		expect(await Promise.all(answers)).toEqual([null, null]);
		expect(slow.closed).toBe(true);
	});
});
