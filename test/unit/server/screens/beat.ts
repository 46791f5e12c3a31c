import type { ScreenBeat } from '../../../../src/lib/content/screens/beat';

/** A beat of a healthy screen. */
export const beat = (over: Partial<ScreenBeat> = {}): ScreenBeat => ({
	name: 'wall',
	page: 'a'.repeat(16),
	uptime_s: 120,
	state: 'awake',
	hidden: false,
	leaving: false,
	touched_min: 1,
	room: 'compare',
	exhibit: '0123456789abcdef',
	version: '1',
	frames: { count: 80, median_ms: 16.7, p95_ms: 21.3 },
	quality: 1,
	heap_MB: 41.5,
	geometries: 12,
	textures: 3,
	contexts: 1,
	losses: 0,
	errors: { count: 0, last: null },
	...over,
});
