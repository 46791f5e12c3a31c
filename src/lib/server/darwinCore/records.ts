import type { Bed, Exhibit, Group, Specimen } from '../../content/exhibit';
import { isLicence } from '../../content/licence';
import { pick } from '../viewFor';
import { generaliseLocality } from './generaliseLocality';
import { geologicalContext } from './geologicalContext';

/** One line of a table: values by term, in the order of the columns. */
export type TermRecord = Readonly<Record<string, string>>;

const DWC = 'http://rs.tdwg.org/dwc/terms/';
const DCTERMS = 'http://purl.org/dc/terms/';
const DC = 'http://purl.org/dc/elements/1.1/';
const AC = 'http://rs.tdwg.org/ac/terms/';
const XMP_RIGHTS = 'http://ns.adobe.com/xap/1.0/rights/';

/** Words of the archive: English where the exhibit has it, since other collections read it. */
const LANGUAGE = 'en';

/** An identifier that no other record anywhere has. Form: common practice, no source */
export const occurrenceId = (museum: string, accession: string): string =>
	`urn:catalog:${encodeURIComponent(museum)}:${encodeURIComponent(accession)}`;

const dwc = (values: Readonly<Record<string, string>>): [string, string][] =>
	Object.entries(values).map(([term, value]) => [DWC + term, value]);

/** Specimens whose rights are said by an address that machines know; the others are not handed on. */
export const exported = (exhibit: Exhibit): Specimen[] =>
	exhibit.specimens.filter(({ licence }) => isLicence(licence));

/** The core: one occurrence for each specimen. */
export function occurrenceRecords(exhibit: Exhibit): TermRecord[] {
	const first = exhibit.languages[0]?.code ?? LANGUAGE;
	const groups = new Map(exhibit.groups.map((group) => [group.id, group]));
	const beds = new Map(exhibit.beds.map((bed) => [bed.id, bed]));
	const sources = new Map(exhibit.sources.map(({ id, citation }) => [id, citation]));
	return exported(exhibit).map((specimen) => {
		const group = groups.get(specimen.group);
		const bed = specimen.bed === undefined ? undefined : beds.get(specimen.bed);
		const {
			locality: place,
			dataGeneralizations,
			informationWithheld,
			...coordinates
		} = generaliseLocality(specimen.locality);
		return Object.fromEntries([
			...dwc({ occurrenceID: occurrenceId(exhibit.museum, specimen.accession) }),
			[`${DC}type`, 'PhysicalObject'],
			[`${DC}language`, LANGUAGE],
			[`${DCTERMS}license`, specimen.licence],
			[`${DCTERMS}rightsHolder`, specimen.rightsHolder],
			...dwc({
				institutionCode: exhibit.museum,
				basisOfRecord: group?.living ? 'PreservedSpecimen' : 'FossilSpecimen',
				informationWithheld,
				dataGeneralizations,
				catalogNumber: specimen.accession,
				occurrenceStatus: 'present',
				associatedReferences: specimen.sources.map((id) => sources.get(id) ?? id).join(' | '),
				occurrenceRemarks: remarks(specimen),
				preparations: specimen.part.replace(/-/g, ' '),
				locality: place,
				...coordinates,
				...geologicalContext(bed && { ...bed, name: bedName(bed, first) }),
				identifiedBy: specimen.identified.by,
				identificationRemarks: `certainty: ${specimen.identified.certainty}`,
				scientificName: group?.latin ?? '',
				vernacularName: groupName(group, first),
			}),
		]) as TermRecord;
	});
}

const bedName = (bed: Bed, first: string): string => pick(bed.text, LANGUAGE, first)?.value.name ?? bed.id;
const groupName = (group: Group | undefined, first: string): string =>
	group ? (pick(group.text, LANGUAGE, first)?.value.name ?? '') : '';

const remarks = ({ shape }: Specimen): string =>
	shape.kind === 'model'
		? 'The exhibit shows this specimen by a model made to published proportions; measures of the model are left out here.'
		: '';

/** Lengths to a tenth of a millimetre, degrees to one: as the exhibit shows them. */
const MEASURES = [
	['crown height', 'crownHeight_mm', 'mm', 1],
	['apical length', 'apicalLength_mm', 'mm', 1],
	['crown base length', 'crownBaseLength_mm', 'mm', 1],
	['crown base width', 'crownBaseWidth_mm', 'mm', 1],
	['crown base ratio', 'crownBaseRatio', '1', 2],
	['crown height ratio', 'crownHeightRatio', '1', 2],
	['mid-crown length', 'midCrownLength_mm', 'mm', 1],
	['mid-crown width', 'midCrownWidth_mm', 'mm', 1],
	['crown angle', 'crownAngle_deg', 'degree', 0],
	['apex angle', 'apexAngle_deg', 'degree', 0],
] as const;

const FROM_CARD = [
	['crown height', 'crownHeight_mm'],
	['crown base length', 'baseLength_mm'],
	['crown base width', 'baseWidth_mm'],
] as const;

/**
 * Measures as MeasurementOrFact: those of a scan, from its mesh, and those that the specimen's card gives. A model
 * is not the specimen, so its measures are not among them.
 */
export function measurementRecords(exhibit: Exhibit): TermRecord[] {
	return exported(exhibit).flatMap((specimen) => {
		const core = occurrenceId(exhibit.museum, specimen.accession);
		const record = (
			id: string,
			type: string,
			value: string,
			unit: string,
			accuracy: string,
			by: string,
			method: string,
		): TermRecord =>
			Object.fromEntries([
				['coreid', core],
				...dwc({
					measurementID: `${core}:${id}`,
					measurementType: type,
					measurementValue: value,
					measurementAccuracy: accuracy,
					measurementUnit: unit,
					measurementDeterminedBy: by,
					measurementMethod: method,
				}),
			]) as TermRecord;
		const measured =
			specimen.shape.kind === 'scan'
				? MEASURES.flatMap(([type, key, unit, decimals]) => {
						const value = specimen.prepared.measures[key];
						if (value === null || !Number.isFinite(value)) return [];
						const accuracy = String(Number((10 ** -decimals).toFixed(decimals)));
						const method = `measured from mesh (${specimen.prepared.measures.triangles} triangles); definitions: Smith, Vann & Dodson 2005, doi:10.1002/ar.a.20206; Hendrickx, Mateus & Araujo 2015, doi:10.1080/02724634.2015.982797; accuracy is the rounding`;
						const by = exhibit.museum;
						return [record(`mesh:${key}`, type, value.toFixed(decimals), unit, accuracy, by, method)];
					})
				: [];
		const onCard = FROM_CARD.flatMap(([type, key]) => {
			const value = specimen.declared?.[key];
			if (value === undefined) return [];
			return [
				record(`card:${key}`, type, String(value), 'mm', '', '', 'as written on the card of the specimen'),
			];
		});
		return [...measured, ...onCard];
	});
}

/** Where a scan's prepared copy is served, and what its bytes are. */
export interface ServedMedia {
	/** path on this server */
	path: string;
	/** SHA-256 of the file, hexadecimal; absent where it could not be read */
	sha256?: string;
}

/** Scans as media: the copy that the exhibit serves, with an address where the exhibit has one on the web. */
export function mediaRecords(exhibit: Exhibit, served: (specimen: Specimen) => ServedMedia): TermRecord[] {
	const first = exhibit.languages[0]?.code ?? LANGUAGE;
	return exported(exhibit).flatMap((specimen) => {
		if (specimen.shape.kind !== 'scan') return [];
		const core = occurrenceId(exhibit.museum, specimen.accession);
		const label = pick(specimen.text, LANGUAGE, first);
		const { path, sha256 } = served(specimen);
		return [
			Object.fromEntries([
				['coreid', core],
				[`${DCTERMS}identifier`, `${core}:scan`],
				[`${DC}type`, 'StillImage'],
				[`${AC}subtypeLiteral`, '3DStillImage'],
				[`${DCTERMS}title`, label?.value.title ?? specimen.accession],
				[`${AC}caption`, label?.value.alt ?? ''],
				[`${AC}metadataLanguageLiteral`, label?.lang ?? first],
				[`${DCTERMS}rights`, specimen.licence],
				[`${XMP_RIGHTS}Owner`, specimen.rightsHolder],
				[`${AC}associatedSpecimenReference`, core],
				[`${AC}accessURI`, exhibit.publicAddress === undefined ? '' : `${exhibit.publicAddress}${path}`],
				[`${DC}format`, 'model/gltf-binary'],
				[
					`${AC}variantDescription`,
					'Scan in millimetres, turned upright and made smaller for the exhibit; glTF 2.0, lengths in metres',
				],
				[`${AC}hashFunction`, sha256 === undefined ? '' : 'SHA-256'],
				[`${AC}hashValue`, sha256 ?? ''],
			]) as TermRecord,
		];
	});
}
