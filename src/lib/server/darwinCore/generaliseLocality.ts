import type { Locality } from '../../content/exhibit';

/** Decimal places of a coordinate by category of sensitivity; category 1 is withheld. */
const PLACES: Readonly<Record<number, number>> = { 2: 1, 3: 2, 4: 3 };

/** Darwin Core's terms on a place, by local name. */
export interface GeneralisedLocality {
	decimalLatitude: string;
	decimalLongitude: string;
	geodeticDatum: string;
	coordinatePrecision: string;
	coordinateUncertaintyInMeters: string;
	locality: string;
	dataGeneralizations: string;
	informationWithheld: string;
}

const NOTHING: GeneralisedLocality = {
	decimalLatitude: '',
	decimalLongitude: '',
	geodeticDatum: '',
	coordinatePrecision: '',
	coordinateUncertaintyInMeters: '',
	locality: '',
	dataGeneralizations: '',
	informationWithheld: '',
};

/** Half the diagonal of a square of one degree at the equator, metres: 111,320 m a degree. */
const HALF_DIAGONAL_M = (111_320 * Math.SQRT2) / 2;

/**
 * A find's place as it may be handed on. Rounded, never moved at random, and it is said that it was; the words
 * of the place go along at the lowest category only, since they may tell more than the rounded numbers.
 * Source: GBIF, Current Best Practices for Generalizing Sensitive Species Occurrence Data: category 1 withheld, 2
 * to 0.1 degrees, 3 to 0.01, 4 to 0.001, recorded in dataGeneralizations and informationWithheld.
 */
export function generaliseLocality(found: Locality | undefined): GeneralisedLocality {
	if (!found) return { ...NOTHING };
	const places = PLACES[found.sensitivity];
	if (places === undefined) {
		return {
			...NOTHING,
			informationWithheld: 'Place of the find withheld to protect the site; ask the museum.',
		};
	}
	const precision = 10 ** -places;
	const wordsKept = found.sensitivity === 4;
	return {
		decimalLatitude: rounded(found.latitude_deg, places),
		decimalLongitude: rounded(found.longitude_deg, places),
		geodeticDatum: 'EPSG:4326',
		coordinatePrecision: String(Number(precision.toFixed(places))),
		coordinateUncertaintyInMeters: String(Math.ceil(HALF_DIAGONAL_M * precision)),
		locality: wordsKept ? (found.place ?? '') : '',
		dataGeneralizations: `Coordinates rounded to ${precision.toFixed(places)} degrees to protect the site.`,
		informationWithheld:
			wordsKept || found.place === undefined
				? 'Exact coordinates withheld; ask the museum.'
				: 'Exact coordinates and the name of the place withheld; ask the museum.',
	};
}

/** To so many places; no minus before a zero. */
const rounded = (degrees: number, places: number): string =>
	String(Number((Math.round(degrees * 10 ** places) / 10 ** places).toFixed(places)) + 0);
