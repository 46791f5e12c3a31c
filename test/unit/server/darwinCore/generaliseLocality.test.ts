import { describe, expect, it } from 'vitest';
import { generaliseLocality } from '../../../../src/lib/server/darwinCore/generaliseLocality';
import { geologicalContext } from '../../../../src/lib/server/darwinCore/geologicalContext';

const at = (sensitivity: number, latitude_deg = 51.50735, longitude_deg = -0.04) =>
	generaliseLocality({ place: 'Below the mill', latitude_deg, longitude_deg, sensitivity });

describe('generaliseLocality', () => {
	// Categories and steps: GBIF best practice for sensitive occurrences; 51.50735 -> 51.5 / 51.51 / 51.507
	it.each([
		[2, '51.5', '0', '0.1'],
		[3, '51.51', '-0.04', '0.01'],
		[4, '51.507', '-0.04', '0.001'],
	])('category %i', (sensitivity, latitude, longitude, precision) => {
		expect(at(sensitivity)).toMatchObject({
			decimalLatitude: latitude,
			decimalLongitude: longitude,
			coordinatePrecision: precision,
			geodeticDatum: 'EPSG:4326',
			dataGeneralizations: `Coordinates rounded to ${precision} degrees to protect the site.`,
		});
		expect(at(sensitivity).informationWithheld).toContain('Exact coordinates');
	});

	it('gives nothing but the fact at category 1, and at any number that is none', () => {
		for (const sensitivity of [1, 0, 5, 2.5, NaN]) {
			const { informationWithheld, ...rest } = at(sensitivity);
			expect(informationWithheld).toContain('withheld');
			expect(Object.values(rest).join('')).toBe('');
		}
		expect(Object.values(generaliseLocality(undefined)).join('')).toBe('');
	});

	it('keeps the words of the place to itself but at the lowest category', () => {
		expect([1, 2, 3, 4].map((sensitivity) => at(sensitivity).locality)).toEqual([
			'',
			'',
			'',
			'Below the mill',
		]);
	});

	it('never lies farther from the true place than it says', () => {
		for (const [latitude, longitude] of [
			[51.55, 0.05],
			[-33.949999, 151.25],
			[0.0499, -179.95],
		]) {
			for (const sensitivity of [2, 3, 4]) {
				const found = at(sensitivity, latitude, longitude);
				// on a ball of 6,371 km a degree is 111.195 km
				const north = (Number(found.decimalLatitude) - latitude) * 111_195;
				const east =
					(Number(found.decimalLongitude) - longitude) * 111_195 * Math.cos((latitude * Math.PI) / 180);
				expect(Math.hypot(north, east)).toBeLessThanOrEqual(Number(found.coordinateUncertaintyInMeters));
			}
		}
	});
});

describe('geologicalContext', () => {
	const of = (oldest_Ma: number, youngest_Ma: number) =>
		geologicalContext({ oldest_Ma, youngest_Ma, name: 'X' });

	it('names the oldest and the youngest unit, never the other way round', () => {
		// the chart (ICS 2026-06): Santonian from 85.7, Campanian from 83.6, Maastrichtian from 72.2, to 66.0 Ma
		expect(of(84, 80)).toMatchObject({
			earliestAgeOrLowestStage: 'Santonian',
			latestAgeOrHighestStage: 'Campanian',
			earliestEpochOrLowestSeries: 'Late Cretaceous',
			latestEpochOrHighestSeries: 'Late Cretaceous',
			bed: 'X',
		});
		expect(of(70, 60)).toMatchObject({
			earliestEraOrLowestErathem: 'Mesozoic',
			latestEraOrHighestErathem: 'Cenozoic',
			earliestPeriodOrLowestSystem: 'Cretaceous',
			latestPeriodOrHighestSystem: 'Paleogene',
			latestAgeOrHighestStage: '',
		});
	});

	it('says nothing of an animal of today', () => {
		expect(Object.values(geologicalContext(undefined)).join('')).toBe('');
		expect(of(0, 0).earliestPeriodOrLowestSystem).toBe('');
	});
});
