import type { Exhibit, Specimen } from '../../content/exhibit';
import { isLicence } from '../../content/licence';
import { pick } from '../viewFor';
import { pictureUrl, shapeUrl } from '../shapeFiles';

/** Words by language; `none` for what is the same in all (IIIF Presentation 3.0, 4.5 "Language of Property Values"). */
export type LanguageMap = Readonly<Record<string, string[]>>;

export const PRESENTATION_3 = 'http://iiif.io/api/presentation/3/context.json';

/** The picture of the tooth that this server has, px. */
export interface ServedPicture {
	width_px: number;
	height_px: number;
}

/**
 * One specimen as a IIIF manifest for other collections' viewers: Presentation API 3.0, which is final; 4.0 with its 3D
 * scenes is a draft. Its one canvas is the tray picture at its true size; the prepared 3D shape is named beside it.
 * `address` is where the exhibit stands on the web, without a slash at its end: every id is an address below it.
 */
export function manifest(
	exhibit: Exhibit,
	specimen: Specimen,
	address: string,
	picture: ServedPicture,
): object {
	const codes = exhibit.languages.map(({ code }) => code);
	const first = codes[0];
	const inAll = (say: (code: string) => string | undefined): LanguageMap =>
		Object.fromEntries(
			codes.flatMap((code) => {
				const words = say(code);
				return words ? [[code, [words]]] : [];
			}),
		);
	const ui = (key: string): LanguageMap => {
		const found = inAll((code) => exhibit.ui[code]?.[key] ?? exhibit.ui[first]?.[key]);
		// a word that no language has shows as its key, as on the screen: a map may not be empty
		return Object.keys(found).length > 0 ? found : { none: [key] };
	};
	const same = (words: string): LanguageMap => ({ none: [words] });
	const group = exhibit.groups.find(({ id }) => id === specimen.group);
	const bed = exhibit.beds.find(({ id }) => id === specimen.bed);
	const at = `${address}/iiif/${specimen.id}`;
	const image = {
		id: `${address}${pictureUrl(specimen.prepared.hash, specimen.preservation)}`,
		type: 'Image',
		format: 'image/webp',
		width: picture.width_px,
		height: picture.height_px,
	};
	const label = inAll((code) => specimen.text[code]?.title);
	const groupName = (code: string): string | undefined => {
		const name = group && pick(group.text, code, first)?.value.name;
		return group?.latin && name && name !== group.latin ? `${name} (${group.latin})` : (name ?? group?.latin);
	};
	const metadata = [
		{ label: ui('iiif_number'), value: same(specimen.accession) },
		...(group ? [{ label: ui('iiif_animal'), value: inAll(groupName) }] : []),
		{ label: ui('iiif_part'), value: ui(`part_${specimen.part}`) },
		...(bed
			? [{ label: ui('iiif_bed'), value: inAll((code) => pick(bed.text, code, first)?.value.name) }]
			: []),
		{ label: ui('iiif_shape'), value: ui(`iiif_shape_${specimen.shape.kind}`) },
		...measures(specimen).map(([key, value, unit, decimals]) => ({
			label: ui(key),
			value: inAll((code) => {
				const format = { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
				return `${new Intl.NumberFormat(code, format).format(value)}${unit && ` ${unit}`}`;
			}),
		})),
	];
	const canvas = `${at}/canvas/1`;
	return {
		'@context': PRESENTATION_3,
		id: `${at}/manifest.json`,
		type: 'Manifest',
		label,
		summary: inAll((code) => specimen.text[code]?.short),
		metadata,
		requiredStatement: { label: ui('iiif_credit'), value: same(specimen.rightsHolder) },
		...(isLicence(specimen.licence) ? { rights: specimen.licence } : {}),
		provider: [
			{
				id: address,
				type: 'Agent',
				label: same(exhibit.museum),
				homepage: [{ id: `${address}/`, type: 'Text', label: same(exhibit.museum), format: 'text/html' }],
			},
		],
		homepage: codes.map((code) => ({
			id: `${address}/compare?teeth=${specimen.id}&lang=${code}`,
			type: 'Text',
			label: { [code]: [specimen.text[code]?.title ?? specimen.text[first].title] },
			format: 'text/html',
			language: [code],
		})),
		thumbnail: [image],
		rendering: [
			{
				id: `${address}${shapeUrl(specimen.prepared.hash)}`,
				type: 'Model',
				label: ui('iiif_model'),
				format: 'model/gltf-binary',
			},
		],
		items: [
			{
				id: canvas,
				type: 'Canvas',
				label,
				width: picture.width_px,
				height: picture.height_px,
				items: [
					{
						id: `${canvas}/page/1`,
						type: 'AnnotationPage',
						items: [
							{
								id: `${canvas}/page/1/annotation/1`,
								type: 'Annotation',
								motivation: 'painting',
								body: image,
								target: canvas,
							},
						],
					},
				],
			},
		],
	};
}

/** Of the specimen itself only: a model's measures are those of its numbers. */
function measures({
	shape,
	prepared,
}: Specimen): [key: string, value: number, unit: string, decimals: number][] {
	if (shape.kind !== 'scan') return [];
	const { measures: of } = prepared;
	const all: [string, number | null, string, number][] = [
		['measure_height', of.crownHeight_mm, 'mm', 1],
		['measure_length', of.crownBaseLength_mm, 'mm', 1],
		['measure_width', of.crownBaseWidth_mm, 'mm', 1],
		['measure_slenderness', of.crownHeightRatio, '', 2],
		['measure_roundness', of.crownBaseRatio, '', 2],
	];
	return all.flatMap(([key, value, unit, decimals]) =>
		value === null ? [] : [[key, value, unit, decimals] as [string, number, string, number]],
	);
}
