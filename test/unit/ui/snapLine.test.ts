import { describe, expect, it } from 'vitest';
import { snapLine } from '../../../src/lib/ui/feeding/snapLine';
import { textureOf } from '../../../src/lib/ui/feeding/textureOf';

const triangle = [
	[-10, 0],
	[0, 20],
	[10, 0],
] as const;
const xsOf = (path: string) => path.match(/[ML](-?[\d.]+)/g)!.map((part) => Number(part.slice(1)));

describe('snapLine', () => {
	it('runs across the crown where it is broken, a little beyond both sides', () => {
		const half = xsOf(snapLine(triangle, 10, 0.5));
		expect(Math.min(...half)).toBeCloseTo(-5.6, 5);
		expect(Math.max(...half)).toBeCloseTo(5.6, 5);
		expect(Math.max(...xsOf(snapLine(triangle, 18, 0.5)))).toBeCloseTo(1.6, 5);
	});
	it('draws nothing beside the crown', () => {
		expect(snapLine(triangle, 30, 1)).toBe('');
	});
});

describe('textureOf', () => {
	it('knows materials by their names and others by their prey', () => {
		expect(textureOf('skin', 'flesh')).toBe('skin');
		expect(textureOf('bony-scale', 'fish')).toBe('scale');
		expect(textureOf('shell-core', 'turtle')).toBe('sponge');
		expect(textureOf('shell-bone', 'turtle')).toBe('bone');
		expect(textureOf('mollusc-shell', 'shell')).toBe('shell');
		expect(textureOf('something-new', 'squid')).toBe('mantle');
	});
});
