import type { Mark, Measure, Unit } from '../codes';
import { languageName, listsIn, numbersIn, type Shown, type Tongue } from '../parts';

/** Words that many French messages share. */

/**
 * French with its spacing: a narrow no-break space before ; : ? ! » and after «. Only what is written out is
 * spaced; what is filled in stays as it is.
 */
export function fr(words: TemplateStringsArray, ...values: readonly (string | number)[]): string {
	const spaced = (part: string) => part.replace(/ (?=[;:?»]|!(?!\[))/g, '\u202F').replace(/« /g, '«\u202F');
	return words.map((part, i) => (i === 0 ? '' : String(values[i - 1])) + spaced(part)).join('');
}

export const num = numbersIn('fr');
export const list = listsIn('fr');
/** `1 mot`, `2 mots`; zero is singular in French. */
export const count = (n: number, one: string, many: string) => `${num(n)} ${Math.abs(n) < 2 ? one : many}`;

export const nameOf = (path: string) => path || 'ce fichier';

export const shown = (found: Shown): string =>
	typeof found === 'string' ? found : { list: 'une liste', fields: 'plusieurs valeurs' }[found.several];

/** `anglais` */
export const tongue = (one: Tongue) => languageName(one, 'fr');

export const didYouMean = (meant: string | undefined) => (meant ? fr` Vouliez-vous écrire ${meant} ?` : '');

export const UNIT_NAMES: Readonly<Record<Unit, string>> = {
	um: 'micromètres',
	mm: 'millimètres',
	cm: 'centimètres',
	m: 'mètres',
	in: 'pouces',
};

export const MARKS: Readonly<Record<Mark, string>> = {
	apex: 'pointe (apex)',
	baseMesial: 'base mésiale',
	baseDistal: 'base distale',
};

export const MEASURES: Readonly<Record<Measure, string>> = {
	mm: 'les longueurs sont en millimètres',
	m: 'les longueurs d’animaux sont en mètres',
	deg: 'les angles sont en degrés',
	s: 'les durées sont en secondes',
	in: 'la diagonale est en pouces',
	d: 'les durées des dents sont en jours',
	um: 'les largeurs de lignes sont en micromètres',
	mm3: 'les volumes de dents sont en millimètres cubes',
	px: 'l’écran est en pixels',
	mpa: 'les pressions sont en mégapascals',
	gpa: 'la rigidité est en gigapascals',
	kg: 'les masses sont en kilogrammes',
	ma: 'les âges sont en millions d’années',
	serrations: 'les denticules se comptent sur 5 mm du bord',
};
