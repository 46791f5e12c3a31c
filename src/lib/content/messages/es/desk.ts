import type { DESK as EN } from '../en/desk';
import { say } from '../parts';
import { num } from './voice';

/** Why something asked for at the desk was not done. */
export const DESK: typeof EN = {
	'desk-not-understood': () =>
		say(
			'La página envió algo que no son marcas; no se escribió nada.',
			'Carga otra vez la página y pon las marcas de nuevo.',
		),
	'desk-no-such-specimen': (d) =>
		say(
			`No hay ningún espécimen «${d.id}» en la carpeta de contenido.`,
			'Comprueba la dirección, o vuelve al escritorio y elige de la lista.',
		),
	'desk-unreadable': () =>
		say(
			'No se pudo leer specimen.yaml: es demasiado largo, no está guardado en UTF-8 o está bloqueado.',
			'Ciérralo en otros programas, y mira lo que el escritorio indica para este espécimen.',
		),
	'desk-specimen-has-errors': (d) =>
		d
			? say(`specimen.yaml, línea ${num(d.line)}: ${d.said.message}`, d.said.remedy)
			: say(
					'specimen.yaml no se puede leer tal como está.',
					'Corrige primero lo que el escritorio indica para este espécimen.',
				),
	'desk-marks-not-possible': (d) =>
		d ? say(d.said.message, d.said.remedy) : say('Estas marcas no son posibles.', 'Ponlas de nuevo.'),
	'desk-not-a-scan': () =>
		say(
			'Este diente es un modelo en números, y un modelo marca su propia corona.',
			'Cambia los números bajo model: en specimen.yaml.',
		),
	'desk-not-editable': () =>
		say(
			'El archivo está escrito de un modo que no se puede cambiar desde aquí sin riesgo.',
			'Escribe las marcas a mano en specimen.yaml, o da a sus líneas la forma que tienen las de otros especímenes.',
		),
	'desk-changed-meanwhile': () =>
		say(
			'specimen.yaml ha cambiado desde que se abrió esta página; no se escribió nada.',
			'Carga otra vez la página y pon las marcas de nuevo.',
		),
	'desk-not-written': (d) =>
		say(
			`No se pudo escribir specimen.yaml (${d.reason ?? 'motivo desconocido'}).`,
			'Comprueba que este ordenador puede escribir en la carpeta de contenido y que su disco no está lleno.',
		),
};
