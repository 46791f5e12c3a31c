import type { SHOWN as EN } from '../en/shown';
import { say, short } from '../parts';
import { didYouMean } from './voice';

/** What is shown when, and in which order. */
export const SHOWN: typeof EN = {
	'not-a-day': (d) =>
		say(
			`«${short(d.found)}» no es un día del calendario, escrito con año, mes y día.`,
			`Escribe ${d.key}: 2026-12-01`,
		),
	'until-before-from': (d) =>
		say(
			`El último día (${d.until}) es anterior al primero (${d.from}), así que esto no se mostraría nunca.`,
			`Cámbialos de lugar: { from: ${d.until}, until: ${d.from} }`,
		),
	'show-is-over': (d) =>
		say(
			`El último día fue el ${d.until}, así que esto ya no se muestra.`,
			'Escribe un día posterior. Para que se muestre siempre, borra la línea que empieza por show:',
		),
	'no-room-shown': () =>
		say(
			'Hoy no se muestra ninguna sala: los visitantes no encuentran nada que abrir.',
			'Cambia los días de una de las salas. Para que se muestre siempre, borra su show:',
		),
	'first-not-there': (d) =>
		say(
			`No hay ningún espécimen «${short(d.found)}» que poner primero.${didYouMean(d.meant)}`,
			d.meant ? `Escribe ${d.meant}` : 'Bórralo aquí, o escribe el nombre de una carpeta de specimens/.',
		),
	'unknown-time-zone': (d) =>
		say(
			`No hay ninguna zona horaria «${short(d.found)}».${didYouMean(d.meant)}`,
			`Escribe time_zone: ${d.meant ?? 'Europe/Madrid'}, el nombre de un continente y de una ciudad grande.`,
		),
};
