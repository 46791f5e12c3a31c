import type { REPLACEMENT as EN } from '../en/replacement';
import { exampleFor } from '../examples';
import { number, say } from '../parts';
import { count, fr, num } from './voice';

/** The folder `replacement/`. */
export const REPLACEMENT: typeof EN = {
	'range-swapped': (d) =>
		say(
			fr`${d.path} descend de ${num(d.from)} à ${num(d.to)}.`,
			fr`Échangez-les : from: ${number(d.to)}, to: ${number(d.from)}`,
		),
	'fixed-name': (d) =>
		say(
			fr`« ${d.found} » n’est pas l’un des noms que ce fichier peut employer : ${d.names.join(', ')}.`,
			fr`Employez l’un de ces noms, chacun une fois.`,
		),
	'spacing-missing': () =>
		say(
			fr`Une mâchoire a besoin de spacing (un nombre) ou de spacings (une liste), l’un des deux.`,
			fr`Écrivez ${exampleFor('spacing')}`,
		),
	'spacings-count': (d) =>
		say(
			fr`spacings a ${count(d.found, 'nombre', 'nombres')} ; une mâchoire en a un pour chaque pas entre deux positions, ici ${num(d.needed)}.`,
			fr`Écrivez ${count(d.needed, 'nombre', 'nombres')}, ou spacing: 2 pour toute la mâchoire.`,
		),
	'successor-older': (d) =>
		say(
			fr`La dent suivante (${count(d.successor, 'ligne', 'lignes')}) n’est pas plus jeune que la dent en service (${count(d.inUse, 'ligne', 'lignes')}).`,
			fr`Vérifiez laquelle est laquelle : la dent en service est la plus âgée.`,
		),
	'answer-disagrees': (d) =>
		say(
			fr`La réponse est « ${d.answer} », mais ses signes (root, base, tip) mènent à « ${d.verdict} ».`,
			fr`Changez les signes, ou écrivez answer: ${d.verdict}`,
		),
	'words-missing': (d) =>
		say(
			fr`Il n’y a pas de mots utilisables pour « ${d.found} » dans ${d.file} ; ce n’est donc pas montré.`,
			fr`Ajoutez-les à ${d.file} sous ${d.table}: ${d.found}: { name: A name, line: One line }`,
		),
};
