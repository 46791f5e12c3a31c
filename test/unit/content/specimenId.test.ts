import { describe, expect, it } from 'vitest';
import { ID_PATTERN } from '../../../src/lib/content/schemas';
import { specimenId } from '../../../src/lib/content/specimenId';

describe('specimenId', () => {
	it.each([
		['SKM 0104', 'skm-0104'],
		['  SKM.0104/b ', 'skm-0104-b'],
		['Nº 12', 'n-12'],
		['Señal É-1', 'senal-e-1'],
		['Østergård 3', 'ostergard-3'],
		['../../etc/passwd', 'etc-passwd'],
		['--', ''],
		['標本', ''],
	])('%s -> %s', (accession, id) => {
		expect(specimenId(accession)).toBe(id);
		if (id !== '') expect(id).toMatch(ID_PATTERN);
	});

	it('stays good where it is cut short', () => {
		expect(specimenId(`${'a'.repeat(59)} b`)).toMatch(ID_PATTERN);
	});
});
