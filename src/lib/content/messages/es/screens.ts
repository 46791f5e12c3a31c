import type { SCREENS as EN } from '../en/screens';
import { say } from '../parts';

/** screens.yaml */
export const SCREENS: typeof EN = {
	'bad-time': (d) =>
		say(
			`«${d.found}» no es una hora: se escribe con horas y minutos, de 0:00 a 24:00.`,
			`Escribe ${d.key}: ${d.meant ?? '18:00'}`,
		),
	'screen-name-own': () =>
		say(
			'«own» es el nombre del aparato de un visitante, así que ninguna pantalla de la sala puede llamarse así.',
			'Da otro nombre a la pantalla, por ejemplo gallery-wall:',
		),
	'screen-room-not-shown': (d) =>
		say(
			`exhibit.yaml no muestra la sala ${d.found}, así que esta pantalla tampoco.`,
			`Añádela bajo rooms en exhibit.yaml, o limítate aquí a ${d.rooms.join(', ')}.`,
		),
	'screen-without-rooms': (d) =>
		say(
			'Ninguna de estas salas se muestra en exhibit.yaml, así que esta pantalla muestra todas las que sí.',
			`Escribe algunas de ellas, por ejemplo rooms: [${d.rooms[0]}]`,
		),
	'screen-language-unknown': (d) =>
		say(
			`«${d.found}» no es un idioma de esta exposición, así que la pantalla empieza con «${d.codes[0]}».`,
			`Escribe uno de estos códigos: ${d.codes.join(', ')}, por ejemplo first_language: ${d.codes[d.codes.length - 1]}`,
		),
	'screen-title-twice': (d) =>
		say(
			`Dos pantallas se llaman «${d.found}»: esta y ${d.other}. El personal no podría distinguirlas.`,
			'Di en el título dónde está cada una, por ejemplo title: Gallery wall, left',
		),
	'screen-day-twice': (d) =>
		say(
			`${d.found} está más de una vez en las horas de esta pantalla; vale la primera.`,
			'Nombra cada día de la semana una sola vez.',
		),
	'screen-dim-outside': (d) =>
		say(
			`La pantalla debería oscurecerse a las ${d.found}, pero está encendida de ${d.from} a ${d.until}.`,
			'Escribe una hora entre las dos, o quita dim_from.',
		),
};
