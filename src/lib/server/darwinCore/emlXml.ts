import type { Exhibit } from '../../content/exhibit';
import { escapeXml } from './escapeXml';

/**
 * A description of the archive as a whole, in Ecological Metadata Language 2.1.1. `made` is the day on which it was
 * made, YYYY-MM-DD.
 */
export function emlXml(exhibit: Exhibit, made: string): string {
	const museum = escapeXml(exhibit.museum);
	const licences = [...new Set(exhibit.specimens.map(({ licence }) => licence))].sort();
	const organisation = `<organizationName>${museum}</organizationName>`;
	return [
		'<?xml version="1.0" encoding="UTF-8"?>',
		`<eml:eml xmlns:eml="eml://ecoinformatics.org/eml-2.1.1" packageId="${exhibit.hash}" system="tooth-table" scope="system" xml:lang="en">`,
		'\t<dataset>',
		`\t\t<title>Teeth of ${museum}</title>`,
		`\t\t<creator>${organisation}</creator>`,
		`\t\t<metadataProvider>${organisation}</metadataProvider>`,
		`\t\t<pubDate>${escapeXml(made)}</pubDate>`,
		'\t\t<language>en</language>',
		`\t\t<abstract><para>Reptile teeth that ${museum} shows on a touchscreen: ${exhibit.specimens.length} specimens with their identification, the rocks they come from, and measures of those that were scanned.</para></abstract>`,
		`\t\t<intellectualRights><para>Rights are given with each record: ${licences.map(escapeXml).join(', ')}</para></intellectualRights>`,
		`\t\t<contact>${organisation}${exhibit.contact === undefined ? '' : `<positionName>${escapeXml(exhibit.contact)}</positionName>`}</contact>`,
		'\t</dataset>',
		'</eml:eml>',
		'',
	].join('\n');
}
