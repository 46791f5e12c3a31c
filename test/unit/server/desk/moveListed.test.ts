import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readYaml } from '../../../../src/lib/content/readYaml';
import { moveRoom, moveSpecimen } from '../../../../src/lib/server/desk/moveListed';

const DEMO = readFileSync(join(import.meta.dirname, '../../../../content/exhibit.yaml'), 'utf8');
const BLOCK = `# rooms in this order
rooms:
  - compare   # the first
  # only in winter
  - room: quiz
    show: { from: 2026-12-01 } # for schools
  - { room: feeding, show: { until: 2027-02-28 } }
  - replacement
contact: Desk
`;
const value = (text: string, key: string): unknown => (readYaml(text).value as Record<string, unknown>)[key];

describe('moveRoom', () => {
	it('changes the order in brackets and not a byte beside it', () => {
		const moved = moveRoom(DEMO, 'quiz', 0);
		const list = '[compare, feeding, replacement, quiz]';
		expect(DEMO).toContain(list);
		expect(moved).toEqual({ ok: true, value: DEMO.replace(list, '[quiz, compare, feeding, replacement]') });
	});

	it('takes days and the note behind an entry along', () => {
		expect(moveRoom(BLOCK, 'quiz', 0)).toEqual({
			ok: true,
			value: `# rooms in this order
rooms:
  - room: quiz
    show: { from: 2026-12-01 } # for schools
  # only in winter
  - compare   # the first
  - { room: feeding, show: { until: 2027-02-28 } }
  - replacement
contact: Desk
`,
		});
		expect(moveRoom(BLOCK, 'talks', 0)).toEqual({ ok: false, problem: { code: 'not-there' } });
	});

	it('moves there and back to the same bytes', () => {
		const rooms = ['compare', 'quiz', 'feeding', 'replacement'];
		fc.assert(
			fc.property(fc.constantFrom(...rooms), fc.nat(5), fc.boolean(), (room, to, windows) => {
				const text = windows ? `\uFEFF${BLOCK.replace(/\n/g, '\r\n')}` : BLOCK;
				const moved = moveRoom(text, room, to);
				if (!moved.ok) throw new Error(room);
				const back = moveRoom(moved.value, room, rooms.indexOf(room));
				expect(back).toEqual({ ok: true, value: text });
			}),
			{ numRuns: 60, seed: 3 },
		);
	});
});

describe('moveSpecimen', () => {
	const shown = ['a', 'b', 'c', 'd'];
	const first = (id: string, to: number, text = DEMO, now = shown) => {
		const moved = moveSpecimen(text, now, id, to);
		if (!moved.ok) throw new Error(moved.problem.code);
		return moved.value;
	};

	it('names only as many as are needed', () => {
		expect(value(first('c', 0), 'specimens_first')).toEqual(['c']);
		expect(value(first('a', 2), 'specimens_first')).toEqual(['b', 'c']);
		expect(value(first('d', 1), 'specimens_first')).toEqual(['a', 'd']);
		expect(value(first('a', 9), 'specimens_first')).toEqual(['b', 'c', 'd']);
	});

	it('puts the line behind the rooms, and takes it away where the names alone give the order', () => {
		const made = first('c', 0);
		expect(made).toBe(DEMO.replace(/^rooms: .*\n/m, (line) => `${line}specimens_first: [c]\n`));
		expect(first('c', 2, made, ['c', 'a', 'b', 'd'])).toBe(DEMO);
		expect(moveSpecimen(DEMO, shown, 'z', 0)).toEqual({ ok: false, problem: { code: 'not-there' } });
	});
});
