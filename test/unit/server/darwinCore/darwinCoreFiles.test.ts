import { describe, expect, it } from 'vitest';
import type { Exhibit } from '../../../../src/lib/content/exhibit';
import { isLicence } from '../../../../src/lib/content/licence';
import { darwinCoreFiles } from '../../../../src/lib/server/darwinCore/darwinCoreFiles';
import { viewFor } from '../../../../src/lib/server/viewFor';
import { exhibit, measures, specimen } from '../samples';
import { MEASUREMENT_TERMS, MEDIA_TERMS, OCCURRENCE_TERMS } from './publishedTerms';
import { readArchive } from './readArchive';

const DWC = 'http://rs.tdwg.org/dwc/terms/';
const AC = 'http://rs.tdwg.org/ac/terms/';
const DCTERMS = 'http://purl.org/dc/terms/';
const scan = { kind: 'scan', file: 'scan.stl', units: 'mm' } as const;

const sample = (changes: Partial<Exhibit> = {}): Exhibit =>
	exhibit({
		museum: 'Skerrow & "Son" <Museum>',
		publicAddress: 'https://teeth.skerrow.example',
		specimens: [
			specimen('a', { accession: 'SKM 1, "small"\nbox' }),
			specimen('b', {
				accession: 'SKM 2',
				shape: scan,
				declared: { crownHeight_mm: 38 },
				locality: { place: 'Mill', latitude_deg: 51.50735, longitude_deg: -0.12776, sensitivity: 2 },
			}),
			specimen('c', { accession: 'SKM 3', licence: 'all ours', shape: scan }),
		],
		...changes,
	});

const archive = (of: Exhibit = sample()) => {
	const files = darwinCoreFiles(
		of,
		({ id }) => ({ path: `/shapes/${id}.glb`, ...(id === 'b' ? { sha256: 'ab12' } : {}) }),
		'2026-03-01',
	);
	const bytes = Object.fromEntries(Object.entries(files).map(([name, text]) => [name, Buffer.from(text)]));
	return { files, ...readArchive(bytes) };
};

describe('darwinCoreFiles', () => {
	it('uses terms that are published, each once, for the kind of table that they are for', () => {
		const { core, extensions } = archive();
		const known: Record<string, Set<string>> = {
			[`${DWC}MeasurementOrFact`]: MEASUREMENT_TERMS,
			[`${AC}Multimedia`]: MEDIA_TERMS,
		};
		expect(core.rowType).toBe(`${DWC}Occurrence`);
		expect(core.terms.filter((term) => !OCCURRENCE_TERMS.has(term))).toEqual([]);
		expect(extensions.map(({ rowType }) => rowType)).toEqual(Object.keys(known));
		for (const { rowType, terms } of extensions) {
			expect(terms.filter((term) => !known[rowType].has(term))).toEqual([]);
			expect(new Set(terms).size).toBe(terms.length);
		}
		expect(new Set(core.terms).size).toBe(core.terms.length);
	});

	it('is read back by the rules of the text guide, every row with its core', () => {
		const { core, extensions, metadata, files } = archive();
		expect(files).toHaveProperty([metadata]);
		expect(core.rows.map((row) => row[`${DWC}catalogNumber`])).toEqual(['SKM 1, "small"\nbox', 'SKM 2']);
		expect(core.rows[0]).toMatchObject({
			id: core.rows[0][`${DWC}occurrenceID`],
			[`${DWC}institutionCode`]: 'Skerrow & "Son" <Museum>',
			[`${DWC}basisOfRecord`]: 'FossilSpecimen',
			[`${DWC}scientificName`]: 'Mosasaurus',
			[`${DWC}bed`]: 'Marl',
			[`${DWC}earliestAgeOrLowestStage`]: 'Maastrichtian',
			[`${DWC}latestAgeOrHighestStage`]: 'Maastrichtian',
			[`${DWC}latestPeriodOrHighestSystem`]: 'Cretaceous',
			[`${DWC}associatedReferences`]: 'A book, 1865.',
		});
		const ids = new Set(core.rows.map(({ id }) => id));
		expect(ids.size).toBe(2);
		for (const { rows } of extensions) {
			expect(rows.length).toBeGreaterThan(0);
			for (const { id } of rows) expect(ids).toContain(id);
		}
	});

	it('gives rights by addresses that machines know, and leaves out what has none', () => {
		const { core, extensions } = archive();
		for (const row of core.rows) expect(isLicence(row[`${DCTERMS}license`])).toBe(true);
		for (const row of extensions[1].rows) expect(isLicence(row[`${DCTERMS}rights`])).toBe(true);
		expect(JSON.stringify([core, extensions])).not.toContain('SKM%203');
	});

	it('gives measures of scans and of cards, number and unit apart, and none of models', () => {
		const [{ rows }] = archive().extensions;
		const of = (type: string) =>
			rows
				.filter((row) => row[`${DWC}measurementType`] === type)
				.map((row) => ['Value', 'Unit', 'Accuracy', 'Method'].map((part) => row[`${DWC}measurement${part}`]));
		expect(of('crown height')).toEqual([
			[measures.crownHeight_mm.toFixed(1), 'mm', '0.1', expect.stringMatching(/^measured from mesh/)],
			['38', 'mm', '', 'as written on the card of the specimen'],
		]);
		for (const row of rows) expect(Number(row[`${DWC}measurementValue`])).not.toBeNaN();
		expect(rows.every(({ id }) => id.endsWith('SKM%202'))).toBe(true);
		expect(new Set(rows.map((row) => row[`${DWC}measurementID`])).size).toBe(rows.length);
	});

	it('names a scan by an address on the web only where the exhibit has one', () => {
		const media = (of: Exhibit) => archive(of).extensions[1].rows[0];
		expect(media(sample())).toMatchObject({
			[`${AC}accessURI`]: 'https://teeth.skerrow.example/shapes/b.glb',
			[`${AC}hashFunction`]: 'SHA-256',
			[`${AC}hashValue`]: 'ab12',
		});
		expect(media(sample({ publicAddress: undefined }))[`${AC}accessURI`]).toBe('');
	});

	it('leaves out a table that has no lines', () => {
		const { extensions, files } = archive(exhibit({ specimens: [specimen('a')] }));
		expect(extensions).toEqual([]);
		expect(Object.keys(files)).toEqual(['occurrence.csv', 'meta.xml', 'eml.xml']);
		expect(archive(exhibit({ specimens: [] })).core.rows).toEqual([]);
	});

	it('says living animals are preserved, not fossil', () => {
		const [group] = exhibit().groups;
		const { core } = archive(exhibit({ groups: [{ ...group, living: true }], specimens: [specimen('a')] }));
		expect(core.rows[0][`${DWC}basisOfRecord`]).toBe('PreservedSpecimen');
	});

	it('writes XML that holds whatever the museum is called', () => {
		const { files } = archive();
		expect(files['eml.xml']).toContain(
			'<title>Teeth of Skerrow &amp; &quot;Son&quot; &lt;Museum&gt;</title>',
		);
		expect(files['eml.xml']).toContain('<pubDate>2026-03-01</pubDate>');
	});
});

describe('the place of a find', () => {
	it('goes out rounded, and is said to be', () => {
		const row = archive().core.rows[1];
		expect(row).toMatchObject({
			[`${DWC}decimalLatitude`]: '51.5',
			[`${DWC}decimalLongitude`]: '-0.1',
			[`${DWC}locality`]: '',
		});
		expect(row[`${DWC}dataGeneralizations`]).toContain('0.1 degrees');
		expect(JSON.stringify(archive().files)).not.toContain('51.507');
	});

	it('never reaches a visitor', () => {
		const view = JSON.stringify(viewFor(sample(), 'en'));
		expect(view).not.toContain('51.5');
		expect(view).not.toContain('latitude');
	});
});
