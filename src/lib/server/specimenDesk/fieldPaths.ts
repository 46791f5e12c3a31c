import type { FactFields } from '../../content/specimenDesk';

/** Where each field of the desk stands in specimen.yaml. */
export const FIELD_PATHS: Readonly<Record<keyof FactFields, string>> = {
	accession: 'accession',
	group: 'group',
	part: 'part',
	preservation: 'preservation',
	bed: 'bed',
	by: 'identified.by',
	certainty: 'identified.certainty',
	licence: 'licence',
	rightsHolder: 'rights_holder',
	sources: 'sources',
	status: 'status',
	from: 'show.from',
	until: 'show.until',
};
