import type { Mark, Measure, Unit } from '../codes';
import type { Shown, Tongue } from '../parts';

/** Words that many English messages share. */

export const list = (words: readonly string[], join = 'or') =>
	words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${join} ${words[words.length - 1]}`;

export const nameOf = (path: string) => path || 'this file';

export const shown = (found: Shown): string =>
	typeof found === 'string' ? found : { list: 'a list', fields: 'several values' }[found.several];

/** `1 error`, `2 errors`. */
export const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;

/** How a language is called in a sentence. */
export const tongue = ({ name }: Tongue) => name;

export const didYouMean = (meant: string | undefined) => (meant ? ` Did you mean ${meant}?` : '');

/** Units of a scan as they are said. */
export const UNIT_NAMES: Readonly<Record<Unit, string>> = {
	um: 'micrometres',
	mm: 'millimetres',
	cm: 'centimetres',
	m: 'metres',
	in: 'inches',
};

export const MARKS: Readonly<Record<Mark, string>> = {
	apex: 'apex',
	baseMesial: 'mesial base',
	baseDistal: 'distal base',
};

/** What the unit in the name of a line says. */
export const MEASURES: Readonly<Record<Measure, string>> = {
	mm: 'lengths are in millimetres',
	m: 'lengths of animals are in metres',
	deg: 'angles are in degrees',
	s: 'times are in seconds',
	in: 'the diagonal is in inches',
	d: 'times of teeth are in days',
	um: 'widths of lines are in micrometres',
	mm3: 'volumes of teeth are in cubic millimetres',
	px: 'the screen is in pixels',
	mpa: 'pressures are in megapascals',
	gpa: 'stiffness is in gigapascals',
	kg: 'masses are in kilograms',
	ma: 'ages are in millions of years',
	serrations: 'serrations are counted on 5 mm of the edge',
};
