import type { MEASURED as EN } from '../en/measured';
import type { Doubt } from '../codes';
import { exampleFor } from '../examples';
import { say } from '../parts';
import { count, MARKS, num, UNIT_NAMES } from './voice';

/** Why a scan is hardly one tooth. */
function because(doubt: Doubt | undefined): string {
	if (!doubt) return '.';
	if (doubt.is === 'pieces')
		return `: tiene ${count(doubt.n, 'pieza separada', 'piezas separadas')} de tamaño parecido.`;
	if (doubt.is === 'openings')
		return `: tiene ${count(doubt.n, 'abertura', 'aberturas')} de lado a lado y huecos anchos, como un cráneo o una mandíbula.`;
	return doubt.is === 'hollow'
		? ': la mayor parte del espacio que ocupa está vacía.'
		: ': cortado de través, se separa en cinco partes o más, como una fila de dientes.';
}

/** Scans that were measured. */
export const MEASURED: typeof EN = {
	'scan-unit': (d) =>
		say(
			`La ficha dice ${d.key}: ${d.says}, pero leído en ${UNIT_NAMES[d.units]} el escaneo mide ${num(d.is)} mm: los números del archivo parecen ${UNIT_NAMES[d.meant]}.`,
			`Escribe units: ${d.meant}`,
		),
	'unlike-the-card': (d) =>
		say(
			`La ficha dice ${d.key}: ${d.says}, pero la forma mide ${num(d.is)} mm.`,
			'Mide el diente otra vez, y comprueba que el número, el escaneo y sus marcas son del mismo diente.',
		),
	'unlikely-size': (d) =>
		say(
			`Leída en ${UNIT_NAMES[d.units]}, esta corona tiene ${num(d.height_mm)} mm de alto, algo poco probable en un diente.`,
			'Pregunta a quien hizo el escaneo por la unidad de sus números: units: mm, cm, m, um o in.',
		),
	'crown-base-not-marked': () =>
		say(
			'Nada dice dónde acaba la corona y empieza la raíz, así que toda la pieza se midió como corona.',
			`Marca la punta y la base en el escritorio, o escribe bajo scan: ${exampleFor('crown')}`,
		),
	'not-one-tooth': (d) =>
		say(
			`Esto no parece un solo diente, y las medidas de una corona dicen poco${because(d.doubt)}`,
			'Recorta un solo diente en el programa que hizo el escaneo, o marca su corona: se da crédito a las marcas.',
		),
	'several-pieces': () =>
		say(
			'El escaneo tiene varias piezas separadas; se midieron todas juntas.',
			'Borra lo que no sea el diente (soporte, plastilina, restos) en el programa que hizo el escaneo.',
		),
	'colour-unreadable': () =>
		say(
			'La imagen que da color a la superficie del escaneo no se puede usar. El diente se muestra en el color de su conservación.',
			'Guarda otra vez el escaneo como GLB con su imagen dentro, en JPEG o PNG de 8192 x 8192 píxeles como mucho; o escribe bajo scan: colour: plain',
		),
	'coarse-mesh': () =>
		say(
			'El escaneo tiene tan pocos triángulos que sus medidas son aproximadas.',
			`Guárdalo otra vez con más: ${num(40_000)} triángulos muestran bien un diente entero.`,
		),
	'mark-off-surface': (d) =>
		say(
			`Una marca de la corona (${MARKS[d.mark]}) está a ${num(d.gap_mm)} mm de la superficie del escaneo.`,
			'Márcala otra vez en el escritorio. A mano: las marcas van en milímetros, en los ejes del propio escaneo, sea cual sea su unidad.',
		),
};
