import type { KEYS as EN } from '../en/keys';
import { exampleAt, exampleFor, lineFor } from '../examples';
import { say, short } from '../parts';
import { didYouMean, MEASURES } from './voice';

/** The names of lines. */
export const KEYS: typeof EN = {
	'unknown-key': (d) =>
		say(
			`«${short(d.key)}» no se conoce aquí.${didYouMean(d.meant)}`,
			d.meant
				? `Escribe ${lineFor(d.meant, d.value)}`
				: `Borra la línea, o usa uno de estos nombres: ${d.known.join(', ')}`,
		),
	'key-spelling': (d) =>
		say(
			`«${short(d.key)}» se escribe aquí ${d.meant}: en minúsculas, en inglés británico, con las palabras unidas por un guion bajo.`,
			`Escribe ${lineFor(d.meant, d.value)}`,
		),
	'key-in-wrong-place': (d) =>
		say(
			`«${d.key}» no va ${d.here ? `bajo ${d.here}` : 'en el borde izquierdo'}, sino ${d.home ? `bajo ${d.home}` : 'allí'}.`,
			d.home
				? `Pon la línea debajo de ${d.home}, con dos espacios más delante que esa línea.`
				: 'Pon la línea en el borde izquierdo, sin espacios delante.',
		),
	'wrong-unit': (d) =>
		say(
			`«${d.key}» está en otra unidad: ${MEASURES[d.measure]}: ${d.meant}`,
			d.value === undefined ? `Escribe ${exampleFor(d.meant)}` : `Escribe ${d.meant}: ${d.value}`,
		),
	'unit-missing': (d) =>
		say(
			`«${d.key}» no dice su unidad: ${MEASURES[d.measure]}: ${d.meant}`,
			d.value === undefined
				? `Escribe ${exampleFor(d.meant)}`
				: `Escribe ${d.meant}: ${d.value}, si esa es su unidad`,
		),
	'missing-key': (d) => say(`Falta la línea ${d.key}.`, `Añade una línea como ${exampleAt(d.path)}`),
};
