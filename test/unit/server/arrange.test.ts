import { describe, expect, it } from 'vitest';
import { arrange, parseArrange, readRooms } from '../../../src/lib/server/arrange';

const EXHIBIT = `# settings
museum: Skerrow Museum
# Rooms on the start screen, in this order.
rooms: [compare, feeding, quiz]   # three
idle: { warn_after_s: 100 }
`;
const file = { path: 'exhibit.yaml' as const, base: 'x', exact: EXHIBIT };
const room = (name: string, from = '', until = '') => ({ room: name, from, until });
const made = (asked: Omit<Parameters<typeof arrange>[0], 'file'>): string => {
	const arranged = arrange({ file, ...asked });
	if (!arranged.ok) throw new Error(arranged.problem.code);
	return arranged.value;
};

describe('arrange', () => {
	it('moves rooms, and nothing else', () => {
		expect(made({ rooms: [room('quiz'), room('compare'), room('feeding')] })).toBe(
			EXHIBIT.replace('[compare, feeding, quiz]', '[quiz, compare, feeding]'),
		);
		expect(made({})).toBe(EXHIBIT);
	});

	it('closes rooms, opens others, and gives them days', () => {
		const wanted = [
			room('quiz', '2027-02-01', '2027-02-28'),
			room('replacement'),
			room('compare', '', '2030-01-01'),
		];
		const text = made({ rooms: wanted });
		expect(readRooms(text)).toEqual(wanted);
		for (const line of [
			'# settings',
			'# Rooms on the start screen, in this order.',
			'idle: { warn_after_s: 100 }',
		])
			expect(text).toContain(line);
		expect(readRooms(EXHIBIT)).toEqual([room('compare'), room('feeding'), room('quiz')]);
	});

	it('names as few specimens as the order needs', () => {
		expect(made({ specimens: ['c', 'a', 'b'] })).toMatch(/^specimens_first: \[c\]$/m);
		expect(made({ specimens: ['a', 'b', 'c'] })).toBe(EXHIBIT);
	});

	it('gives up where exhibit.yaml cannot be read', () => {
		expect(arrange({ file: { ...file, exact: null } }).ok).toBe(false);
		expect(arrange({ file: { ...file, exact: 'rooms: [a' }, rooms: [room('quiz')] }).ok).toBe(false);
	});
});

describe('parseArrange', () => {
	it('takes what the page sends, and nothing that would lead elsewhere', () => {
		expect(parseArrange({ file, rooms: [room('quiz')], specimens: ['skm-1'] })).not.toBeNull();
		for (const wrong of [
			null,
			{ file: { ...file, path: '../exhibit.yaml' } },
			{ file, rooms: [{ room: 'cellar', from: '', until: '' }] },
			{ file, rooms: [room('quiz', 'tomorrow')] },
			{ file, specimens: ['../x'] },
			{ file, more: 1 },
		])
			expect(parseArrange(wrong), JSON.stringify(wrong)).toBeNull();
	});
});
