import type { SHAPES as EN } from '../en/shapes';
import { exampleAt } from '../examples';
import { atMost, lastKey, roundedDown, say } from '../parts';
import { num } from './voice';

/** Shapes that cannot be made. */
export const SHAPES: typeof EN = {
	'tip-too-blunt': (d) =>
		say(
			`Un radio de punta de ${d.found === undefined ? 'este tamaño' : `${num(d.found)} mm`} no cabe en esta corona${d.max === undefined ? '' : `; ${num(roundedDown(d.max))} mm es lo máximo`}.`,
			`Hazlo menor, por ejemplo tip_radius_mm: ${d.max === undefined ? 0.5 : atMost(d.max)}`,
		),
	'no-crown-left': () =>
		say(
			'El desgaste que se da aquí se lleva toda la corona.',
			'Comprueba los números bajo wear: un depth_mm menor, o un tip_worn_to_mm mayor (la altura que queda).',
		),
	'serration-too-fine': (d) =>
		say(
			`${d.found === undefined ? 'Tantos' : num(d.found)} dentículos en 5 mm son más finos de lo que el modelo puede mostrar${d.max === undefined ? '' : `; ${num(roundedDown(d.max))} es lo máximo en este diente`}.`,
			`Escribe ${d.max === undefined ? 'un número menor' : `serrations_per_5mm: ${atMost(d.max)}`}, y da el número verdadero en la cartela.`,
		),
	'ridge-too-tall': (d) =>
		say(
			`${lastKey(d.path)} es ${d.found === undefined ? 'demasiado grande' : num(d.found)}: crestas o filos chocarían entre sí${d.max === undefined ? '' : `; ${num(roundedDown(d.max))} es lo máximo aquí`}.`,
			`Hazlo menor, por ejemplo ${d.max === undefined ? exampleAt(d.path) : `${lastKey(d.path)}: ${atMost(d.max)}`}`,
		),
	'pulp-breaks-out': (d) =>
		say(
			'La cavidad de la pulpa atravesaría la pared del diente.',
			`Haz la cavidad más baja o más estrecha${d.max === undefined ? ', por ejemplo pulp: { height_mm: 6, opening: 0.5 }' : `: ${num(roundedDown(d.max))} es lo máximo aquí`}`,
		),
	'sections-empty': () =>
		say(
			'La lista de secciones está vacía; la corona necesita al menos una.',
			'Escribe sections: [{ at: 0, shape: oval }]',
		),
	'shape-not-closed': () =>
		say(
			'Los números del modelo no dan un diente cerrado.',
			'Quita carinae, ridges, wear y pulp, y vuelve a ponerlos uno a uno para encontrar el que no encaja.',
		),
};
