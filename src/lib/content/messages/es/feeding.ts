import type { FEEDING as EN } from '../en/feeding';
import type { FeedingLoss } from '../codes';
import { say, short } from '../parts';
import { num, tongue } from './voice';

/** What cannot be shown without a file. */
const LOSSES: Readonly<Record<FeedingLoss, string>> = {
	room: 'la sala sobre la alimentación no se muestra',
	prey: 'no se muestra ninguna presa',
	guilds: 'no se nombra ningún gremio',
	ridges: 'no se dice nada de las crestas',
	everyday: 'las fuerzas no se comparan con cosas de todos los días',
};

/** The folder `feeding/`. */
export const FEEDING: typeof EN = {
	'number-not-marked': (d) =>
		say(
			`Este número se apoya en «${d.source}», que solo se cita de memoria; la pantalla lo señala.`,
			'Escribe tag: memory al lado, o busca el número y da su fuente.',
		),
	'low-high-swapped': (d) =>
		say(
			`low, value y high no van en aumento: ${num(d.low)}; ${num(d.value)}; ${num(d.high)}.`,
			'Escribe el menor bajo low, el mayor bajo high, y el valor entre los dos.',
		),
	'band-swapped': (d) =>
		say(
			`El intervalo va de ${num(d.from)} a ${num(d.to)}, así que no hay nada en él.`,
			`Cámbialos de sitio: { from: ${d.to}, to: ${d.from} }`,
		),
	'unknown-guild': (d) =>
		say(
			`No hay ningún gremio «${short(d.found)}». Los publicados son ${d.known.join(', ')}.`,
			d.meant ? `Escribe ${d.meant}: en lugar de ${short(d.found)}:` : 'Bórralo, o usa uno de estos nombres.',
		),
	'unknown-material': (d) =>
		say(
			`No hay ningún material utilizable «${short(d.found)}» en feeding/materials.yaml, así que esta presa no se muestra.`,
			d.meant
				? `Escribe material: ${d.meant}`
				: 'Añádelo a materials.yaml, o escribe un identificador que esté allí.',
		),
	'elastic-half': () =>
		say('stiffness_gpa y poisson van juntos; falta uno de los dos.', 'Da los dos, o borra el que está.'),
	'jaw-stops': () =>
		say(
			'Los stops de una mandíbula suben de at: 0 (delante) a at: 1 (detrás); estos no.',
			'Escribe al menos dos stops, en orden: el primero at: 0, el último at: 1.',
		),
	'feeding-part-missing': (d) =>
		say(
			`${d.file} falta o no se puede usar: ${LOSSES[d.without]}.`,
			`Crea el archivo, o copia ${d.file} de la exposición de muestra.`,
		),
	'feeding-words-missing': (d) =>
		say(
			`«${d.key}» no tiene palabras utilizables en el primer idioma (${tongue(d.language)}), así que no se muestra.`,
			`Añádelas a ${d.file}; para empezar, copia las de otro.`,
		),
	'everyday-count': (d) =>
		say(
			`Este texto debe contener {count} y ningún otro hueco: ${short(d.found)}`,
			'Escríbelo así: "{count, plural, one {# apple} other {# apples}}"',
		),
};
