import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { STAGE_IDS } from '../../../src/lib/domain/time/stages';

describe('names of the ages', () => {
	it.each(['en', 'fr', 'es'])('are there for every age in %s', (lang) => {
		const words = parse(readFileSync(`content/ui/${lang}.yaml`, 'utf8')) as Record<string, string>;
		const missing = STAGE_IDS.filter((id) => !words[`time_stage_${id}`]);
		expect(missing).toEqual([]);
	});
});
