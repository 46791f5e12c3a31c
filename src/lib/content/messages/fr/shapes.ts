import type { SHAPES as EN } from '../en/shapes';
import { exampleAt } from '../examples';
import { atMost, lastKey, roundedDown, say } from '../parts';
import { fr, num } from './voice';

/** Shapes that cannot be made. */
export const SHAPES: typeof EN = {
	'tip-too-blunt': (d) =>
		say(
			fr`Un rayon de pointe de ${d.found === undefined ? 'cette taille' : `${num(d.found)} mm`} ne tient pas sur cette couronne${d.max === undefined ? '' : fr` ; ${num(roundedDown(d.max))} mm est le maximum`}.`,
			fr`Réduisez-le, par exemple tip_radius_mm: ${d.max === undefined ? 0.5 : atMost(d.max)}`,
		),
	'no-crown-left': () =>
		say(
			fr`L’usure donnée ici emporte toute la couronne.`,
			fr`Vérifiez les nombres sous wear: un depth_mm plus petit, ou un tip_worn_to_mm plus grand (la hauteur qui reste).`,
		),
	'serration-too-fine': (d) =>
		say(
			fr`Des denticules ${d.found === undefined ? 'aussi nombreux' : `au nombre de ${num(d.found)}`} sur 5 mm sont plus fins que ce que le modèle peut montrer${d.max === undefined ? '' : fr` ; ${num(roundedDown(d.max))} est le maximum sur cette dent`}.`,
			fr`Écrivez ${d.max === undefined ? 'un nombre plus petit' : `serrations_per_5mm: ${atMost(d.max)}`}, et donnez le vrai nombre dans l’étiquette.`,
		),
	'ridge-too-tall': (d) =>
		say(
			fr`${lastKey(d.path)} ${d.found === undefined ? 'est trop grand' : `vaut ${num(d.found)}`} : des crêtes ou des bords se rejoindraient${d.max === undefined ? '' : fr` ; ${num(roundedDown(d.max))} est le maximum ici`}.`,
			fr`Réduisez-le, par exemple ${d.max === undefined ? exampleAt(d.path) : `${lastKey(d.path)}: ${atMost(d.max)}`}`,
		),
	'pulp-breaks-out': (d) =>
		say(
			fr`La cavité de la pulpe traverserait la paroi de la dent.`,
			d.max === undefined
				? fr`Faites une cavité plus basse ou plus étroite, par exemple pulp: { height_mm: 6, opening: 0.5 }`
				: fr`Faites une cavité plus basse ou plus étroite : ${num(roundedDown(d.max))} est le maximum ici`,
		),
	'sections-empty': () =>
		say(
			fr`La liste des sections est vide ; la couronne en a besoin d’au moins une.`,
			fr`Écrivez sections: [{ at: 0, shape: oval }]`,
		),
	'shape-not-closed': () =>
		say(
			fr`Les nombres du modèle ne donnent pas une dent fermée.`,
			fr`Enlevez carinae, ridges, wear et pulp, puis remettez-les un à un pour trouver celui qui ne va pas.`,
		),
};
