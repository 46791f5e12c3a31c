import type { CrownMeasures } from '../domain/measure/crownMeasures';
import { CROWN_PATH } from './crownFindings';
import type { DeclaredSize, SpecimenShape } from './exhibit';
import { fieldPath } from './fieldPath';
import { finding, type Finding, type Place } from './finding';
import type { MessageData, MessageId } from './messages';

/** Heights of crowns outside which one asks, mm: no reptile tooth is known beyond them (common practice, no source). */
const LIKELY_HEIGHT_MM = [0.5, 400] as const;
/** Millimetres in one unit of a scan file. The inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
const MM_PER_UNIT = { um: 0.001, mm: 1, cm: 10, m: 1000, in: 25.4 } as const;
type Units = keyof typeof MM_PER_UNIT;
/** How near to the ratio of two units a ratio must be to tell of them. */
const UNIT_MATCH = 1.06;
/** How far a measure may be from the card's without a word: hands with callipers differ by less (common practice, no source). */
const LIKE_THE_CARD = 1.15;

type PlaceOf = (path: readonly (string | number)[]) => Place;
type Measured = Pick<
	CrownMeasures,
	'axialHeight_mm' | 'crownHeight_mm' | 'crownBaseLength_mm' | 'crownBaseWidth_mm' | 'warnings'
>;
interface Asked {
	shape: SpecimenShape;
	declared?: DeclaredSize;
}

/**
 * What the measures of a shape tell its curator: a scan that is hardly one crown, marks off its surface, sizes that
 * are unlikely or not those on the card. Only a wrong unit is an error.
 */
export function measureFindings(specimen: Asked, measures: Measured, placeOf: PlaceOf): Finding[] {
	const found = cardFindings(specimen, measures, placeOf);
	if (specimen.shape.kind === 'model') return found;
	const say = <K extends MessageId>(id: K, path: readonly string[], data: MessageData<K>): void => {
		found.push(finding(id, placeOf(path), fieldPath(path), data));
	};
	const wrongUnit = found.some(({ id }) => id === 'scan-unit');
	const [least, most] = LIKELY_HEIGHT_MM;
	const height = measures.axialHeight_mm;
	if (!wrongUnit && !(height >= least && height <= most)) {
		say('unlikely-size', ['shape', 'scan', 'units'], { height_mm: height, units: specimen.shape.units });
	}
	for (const { code, message, doubt } of measures.warnings) {
		if (code === 'crown-base-not-marked') say('crown-base-not-marked', ['shape', 'scan'], null);
		else if (code === 'not-one-tooth')
			say('not-one-tooth', ['shape', 'scan', 'file'], { why: message, ...(doubt ? { doubt } : {}) });
		else if (code === 'several-pieces') say('several-pieces', ['shape', 'scan', 'file'], null);
		else if (code === 'colour-unreadable')
			say('colour-unreadable', ['shape', 'scan', 'file'], { why: message });
		else if (code === 'coarse-mesh') say('coarse-mesh', ['shape', 'scan', 'file'], null);
		else if (code === 'mark-off-surface') {
			const [name, key] = MARKS.find(([mark]) => message.includes(` ${mark} `)) ?? MARKS[0];
			const gap = /([\d.]+(?:e[+-]?\d+)?) mm/.exec(message)?.[1];
			say('mark-off-surface', [...CROWN_PATH, key], { mark: name, gap_mm: Number(gap) });
		}
	}
	return found;
}

/** Names of the marks as the measuring and as the file have them. */
const MARKS = [
	['apex', 'apex_mm'],
	['baseMesial', 'base_mesial_mm'],
	['baseDistal', 'base_distal_mm'],
] as const;

/** Measured sizes against those on the card. */
function cardFindings({ shape, declared }: Asked, measures: Measured, placeOf: PlaceOf): Finding[] {
	if (!declared) return [];
	const sizes = [
		// a card's height may be that above the base or that along the distal side: the nearer one counts
		['crown_height_mm', declared.crownHeight_mm, [measures.axialHeight_mm, measures.crownHeight_mm]],
		['base_length_mm', declared.baseLength_mm, [measures.crownBaseLength_mm]],
		['base_width_mm', declared.baseWidth_mm, [measures.crownBaseWidth_mm]],
	] as const;
	const given = sizes.flatMap(([key, says, is]) => (says === undefined ? [] : [{ key, says, is }]));
	if (shape.kind === 'scan') {
		const meant = given.length > 0 ? unitMeant(shape.units, given) : null;
		if (meant) {
			const path = ['shape', 'scan', 'units'];
			const [{ key, says, is }] = given;
			const data = { key, says, is: is[0], units: shape.units, meant };
			return [finding('scan-unit', placeOf(path), fieldPath(path), data)];
		}
	}
	return given
		.map(({ key, says, is }) => ({ key, says, is: nearest(is, says) }))
		.filter(({ says, is }) => !alike(is / says, LIKE_THE_CARD))
		.map((data) => {
			const path = ['declared', data.key];
			return finding('unlike-the-card', placeOf(path), fieldPath(path), data);
		});
}

const nearest = (values: readonly number[], to: number): number =>
	[...values].sort((a, b) => Math.abs(Math.log(a / to)) - Math.abs(Math.log(b / to)))[0];

const alike = (ratio: number, within: number): boolean => Math.abs(Math.log(ratio)) <= Math.log(within);

/** The unit in which all the sizes would come out as the card has them; null where there is none. */
function unitMeant(units: Units, given: readonly { says: number; is: readonly number[] }[]): Units | null {
	const all = Object.keys(MM_PER_UNIT) as Units[];
	return (
		all.find(
			(other) =>
				other !== units &&
				given.every(({ says, is }) =>
					is.some((one) => alike((one / says) * (MM_PER_UNIT[other] / MM_PER_UNIT[units]), UNIT_MATCH)),
				),
		) ?? null
	);
}
