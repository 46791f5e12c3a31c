import { describe, expect, it } from 'vitest';
import { DWELL_BUCKETS, dwellBucket, medianBucket } from '../../../src/lib/domain/use/dwell';
import { useCountsSchema, useEntries } from '../../../src/lib/server/counts/useCounts';
import type { Exhibit } from '../../../src/lib/content/exhibit';

const batch = '3f0c0c5e-8e2b-4c1f-9a53-0b7d1c2e4f60';
const sent = {
	batch,
	screen: 'hall-1',
	rooms: [{ room: 'compare', dwell: '1-2min' }],
	teeth: [{ room: 'compare', specimen: 'globidens-1', laid: true, dwell: '10-30s' }],
	left: [{ room: 'compare', step: 'table', by: 'reset' }],
	languages: ['fr'],
	settings: ['low-layout'],
};
const exhibit = {
	specimens: [{ id: 'globidens-1' }],
	languages: [{ code: 'en' }, { code: 'fr' }],
	screens: [{ id: 'hall-1', title: 'Hall' }],
} as unknown as Exhibit;

describe('what is taken', () => {
	it('a visit’s counts, each by itself and none of them tied to another', () => {
		expect(useEntries(useCountsSchema.parse(sent), exhibit)).toEqual([
			{ kind: 'use-room', facts: { room: 'compare', dwell: '1-2min' } },
			{
				kind: 'use-tooth',
				facts: { room: 'compare', specimen: 'globidens-1', laid: true, dwell: '10-30s' },
			},
			{ kind: 'use-left', facts: { room: 'compare', step: 'table', by: 'reset', screen: 'hall-1' } },
			{ kind: 'use-language', facts: { language: 'fr' } },
			{ kind: 'use-setting', facts: { setting: 'low-layout' } },
		]);
	});

	it('teeth and languages that are not of this exhibit are left out, the rest is counted', () => {
		const more = {
			...sent,
			teeth: [...sent.teeth, { room: 'compare', specimen: 'somebody', laid: true, dwell: '10-30s' }],
			languages: ['fr', 'xx'],
			screen: 'some-body',
		};
		const entries = useEntries(useCountsSchema.parse(more), exhibit)!;
		expect(entries).toHaveLength(5);
		expect(JSON.stringify(entries)).not.toMatch(/some-?body|xx/);
	});

	it('nothing, where the exhibit says that use is not counted', () => {
		expect(useEntries(useCountsSchema.parse(sent), { ...exhibit, counts: { use: false } })).toBeNull();
		expect(useEntries(useCountsSchema.parse(sent), null)).toBeNull();
	});
});

describe('what is refused', () => {
	const cases: Record<string, unknown> = {
		'a name of anybody': { ...sent, visitor: 'anna' },
		'a time of day': { ...sent, at: '2026-11-25T10:00:00Z' },
		'a time in a room': { ...sent, rooms: [{ room: 'compare', dwell: 63.2 }] },
		'free text for a screen': { ...sent, screen: 'The one by the door' },
		'a room there is not': { ...sent, rooms: [{ room: 'office', dwell: '1-2min' }] },
		'a step of another room': { ...sent, left: [{ room: 'compare', step: 'summary', by: 'reset' }] },
		'two ends of one visit': { ...sent, left: [sent.left[0], sent.left[0]] },
		'a setting there is not': { ...sent, settings: ['left-handed'] },
		'a tooth with words': {
			...sent,
			teeth: [{ ...sent.teeth[0], specimen: 'Mozilla/5.0 (X11; Linux)' }],
		},
		'more in a tooth': { ...sent, teeth: [{ ...sent.teeth[0], order: 1 }] },
		'more than a visit can hold': { ...sent, teeth: Array(61).fill(sent.teeth[0]) },
		'no batch': { ...sent, batch: 'me' },
	};
	for (const [name, body] of Object.entries(cases))
		it(name, () => expect(useCountsSchema.safeParse(body).success).toBe(false));
});

describe('dwellBucket', () => {
	it('each step begins where the one before ends', () => {
		const at_s = [0, 9.999, 10, 29.9, 30, 59.9, 60, 119.9, 120, 299.9, 300, 90_000];
		expect(at_s.map((s) => DWELL_BUCKETS.indexOf(dwellBucket(s * 1000)))).toEqual([
			0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5,
		]);
	});

	it('the median lies where half have left', () => {
		expect(medianBucket([0, 0, 0, 0, 0, 0])).toBeNull();
		expect(medianBucket([5, 0, 0, 5, 0, 0])).toBe('under-10s');
		expect(medianBucket([4, 0, 0, 5, 0, 0])).toBe('1-2min');
		expect(medianBucket([1, 2, 3, 4, 5, 60])).toBe('over-5min');
	});
});
