import type { KEYS as EN } from '../en/keys';
import { exampleAt, exampleFor, lineFor } from '../examples';
import { say, short } from '../parts';
import { didYouMean, fr, MEASURES } from './voice';

/** The names of lines. */
export const KEYS: typeof EN = {
	'unknown-key': (d) =>
		say(
			fr`« ${short(d.key)} » n’est pas connu ici.${didYouMean(d.meant)}`,
			d.meant
				? fr`Écrivez ${lineFor(d.meant, d.value)}`
				: fr`Supprimez la ligne, ou prenez l’un de ces noms : ${d.known.join(', ')}`,
		),
	'key-spelling': (d) =>
		say(
			fr`« ${short(d.key)} » s’écrit ici ${d.meant} : en minuscules, en anglais britannique, les mots reliés par un trait bas.`,
			fr`Écrivez ${lineFor(d.meant, d.value)}`,
		),
	'key-in-wrong-place': (d) =>
		say(
			fr`« ${d.key} » ne va pas ${d.here ? `sous ${d.here}` : 'au bord gauche'}, mais ${d.home ? `sous ${d.home}` : 'là'}.`,
			d.home
				? fr`Déplacez la ligne sous ${d.home}, avec deux espaces de plus devant que cette ligne-là.`
				: fr`Déplacez la ligne au bord gauche, sans espace devant.`,
		),
	'wrong-unit': (d) =>
		say(
			fr`« ${d.key} » est dans une autre unité : ${MEASURES[d.measure]} : ${d.meant}`,
			d.value === undefined ? fr`Écrivez ${exampleFor(d.meant)}` : fr`Écrivez ${d.meant}: ${d.value}`,
		),
	'unit-missing': (d) =>
		say(
			fr`« ${d.key} » ne dit pas son unité : ${MEASURES[d.measure]} : ${d.meant}`,
			d.value === undefined
				? fr`Écrivez ${exampleFor(d.meant)}`
				: fr`Écrivez ${d.meant}: ${d.value}, si c’est bien son unité`,
		),
	'missing-key': (d) => say(fr`La ligne ${d.key} manque.`, fr`Ajoutez une ligne comme ${exampleAt(d.path)}`),
};
