import type { DESK as EN } from '../en/desk';
import { say } from '../parts';
import { fr, num } from './voice';

/** Why something asked for at the desk was not done. */
export const DESK: typeof EN = {
	'desk-not-understood': () =>
		say(
			fr`La page a envoyé autre chose que des repères ; rien n’a été écrit.`,
			fr`Chargez de nouveau la page et placez les repères encore une fois.`,
		),
	'desk-no-such-specimen': (d) =>
		say(
			fr`Il n’y a pas de spécimen « ${d.id} » dans le dossier de contenu.`,
			fr`Vérifiez l’adresse, ou revenez au bureau et choisissez dans la liste.`,
		),
	'desk-unreadable': () =>
		say(
			fr`specimen.yaml n’a pas pu être lu : il est trop long, n’est pas enregistré en UTF-8, ou est verrouillé.`,
			fr`Fermez-le dans les autres programmes, et regardez ce que le bureau indique pour ce spécimen.`,
		),
	'desk-specimen-has-errors': (d) =>
		d
			? say(fr`specimen.yaml, ligne ${num(d.line)} : ${d.said.message}`, d.said.remedy)
			: say(
					fr`specimen.yaml ne peut pas être lu tel qu’il est.`,
					fr`Corrigez d’abord ce que le bureau indique pour ce spécimen.`,
				),
	'desk-marks-not-possible': (d) =>
		d
			? say(d.said.message, d.said.remedy)
			: say(fr`Ces repères ne sont pas possibles.`, fr`Placez-les encore une fois.`),
	'desk-not-a-scan': () =>
		say(
			fr`Cette dent est un modèle en nombres, et un modèle marque lui-même sa couronne.`,
			fr`Changez les nombres sous model: dans specimen.yaml.`,
		),
	'desk-not-editable': () =>
		say(
			fr`Le fichier est écrit d’une façon qui ne peut pas être changée d’ici sans risque.`,
			fr`Écrivez les repères à la main dans specimen.yaml, ou donnez à ses lignes la forme de celles des autres spécimens.`,
		),
	'desk-changed-meanwhile': () =>
		say(
			fr`specimen.yaml a été changé depuis que cette page a été ouverte ; rien n’a été écrit.`,
			fr`Chargez de nouveau la page et placez les repères encore une fois.`,
		),
	'desk-not-written': (d) =>
		say(
			fr`specimen.yaml n’a pas pu être écrit (${d.reason ?? 'raison inconnue'}).`,
			fr`Vérifiez que cet ordinateur a le droit d’écrire dans le dossier de contenu et que son disque n’est pas plein.`,
		),
};
