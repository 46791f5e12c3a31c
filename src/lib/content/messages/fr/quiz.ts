import type { QUIZ as EN } from '../en/quiz';
import { say } from '../parts';
import { fr } from './voice';

/** The folder `quiz/`. */
export const QUIZ: typeof EN = {
	'right-not-shown': (d) =>
		say(
			fr`La bonne réponse est ${d.right}, mais ce n’est aucun des trois spécimens (${d.specimens.join(', ')}).`,
			fr`Écrivez l’un d’eux, par exemple right: ${d.specimens[0] ?? 'skm-0104'}`,
		),
	'same-specimen-twice': (d) =>
		say(fr`${d.found} est deux fois parmi les trois spécimens.`, fr`Nommez-en trois différents.`),
	'quiz-specimen-unknown': (d) =>
		say(
			fr`Il n’y a pas de spécimen ${d.found} ; cette question n’est donc pas posée.`,
			d.meant ? fr`Vouliez-vous écrire ${d.meant} ?` : fr`Écrivez le nom d’un dossier de specimens/.`,
		),
	'why-missing': (d) =>
		say(
			fr`Rien ne dit pourquoi « ${d.option} » est juste ou faux. Chaque réponse doit apprendre quelque chose.`,
			fr`Ajoutez-le dans ${d.file || 'ce fichier'} sous why: ${d.option}: One sentence.`,
		),
	'quiz-words-missing': (d) =>
		say(
			fr`Il n’y a pas de mots utilisables pour « ${d.found} » dans ${d.file} ; ce n’est donc pas montré.`,
			fr`Ajoutez-les à ${d.file} sous ${d.table}: ${d.found}:`,
		),
};
