import type { REPLACEMENT as EN } from '../en/replacement';
import { exampleFor } from '../examples';
import { number, say } from '../parts';
import { count, num } from './voice';

/** The folder `replacement/`. */
export const REPLACEMENT: typeof EN = {
	'range-swapped': (d) =>
		say(
			`${d.path} baja de ${num(d.from)} a ${num(d.to)}.`,
			`Cámbialos de sitio: from: ${number(d.to)}, to: ${number(d.from)}`,
		),
	'fixed-name': (d) =>
		say(
			`«${d.found}» no es uno de los nombres que este archivo puede usar: ${d.names.join(', ')}.`,
			'Usa uno de esos nombres, cada uno una vez.',
		),
	'spacing-missing': () =>
		say(
			'Una mandíbula necesita spacing (un número) o spacings (una lista), uno de los dos.',
			`Escribe ${exampleFor('spacing')}`,
		),
	'spacings-count': (d) =>
		say(
			`spacings tiene ${count(d.found, 'número', 'números')}; una mandíbula necesita uno por cada paso entre dos posiciones, aquí ${num(d.needed)}.`,
			`Escribe ${count(d.needed, 'número', 'números')}, o spacing: 2 para toda la mandíbula.`,
		),
	'successor-older': (d) =>
		say(
			`El diente sucesor (${count(d.successor, 'línea', 'líneas')}) no es más joven que el diente en uso (${count(d.inUse, 'línea', 'líneas')}).`,
			'Comprueba cuál es cuál: el diente en uso es el de más edad.',
		),
	'answer-disagrees': (d) =>
		say(
			`La respuesta es «${d.answer}», pero sus señales (root, base, tip) llevan a «${d.verdict}».`,
			`Cambia las señales, o escribe answer: ${d.verdict}`,
		),
	'words-missing': (d) =>
		say(
			`No hay palabras utilizables para «${d.found}» en ${d.file}, así que no se muestra.`,
			`Añádelas a ${d.file} bajo ${d.table}: ${d.found}: { name: A name, line: One line }`,
		),
};
