import type { SHOWN as EN } from '../en/shown';
import { say, short } from '../parts';
import { didYouMean, fr } from './voice';

/** What is shown when, and in which order. */
export const SHOWN: typeof EN = {
	'not-a-day': (d) =>
		say(
			fr`« ${short(d.found)} » n’est pas un jour du calendrier, écrit année, mois et jour.`,
			fr`Écrivez ${d.key}: 2026-12-01`,
		),
	'until-before-from': (d) =>
		say(
			fr`Le dernier jour (${d.until}) vient avant le premier (${d.from}) : rien ne serait jamais montré.`,
			fr`Échangez-les : { from: ${d.until}, until: ${d.from} }`,
		),
	'show-is-over': (d) =>
		say(
			fr`Le dernier jour était le ${d.until} ; ce n’est donc plus montré.`,
			fr`Écrivez un jour plus tardif. Pour que ce soit toujours montré, supprimez la ligne qui commence par show:`,
		),
	'no-room-shown': () =>
		say(
			fr`Aucune salle n’est montrée aujourd’hui : les visiteurs ne trouvent rien à ouvrir.`,
			fr`Changez les jours d’une des salles. Pour qu’elle soit toujours montrée, supprimez son show:`,
		),
	'first-not-there': (d) =>
		say(
			fr`Il n’y a pas de spécimen « ${short(d.found)} » à mettre en premier.${didYouMean(d.meant)}`,
			d.meant ? fr`Écrivez ${d.meant}` : fr`Supprimez-le ici, ou écrivez le nom d’un dossier de specimens/.`,
		),
	'unknown-time-zone': (d) =>
		say(
			fr`Il n’y a pas de fuseau horaire « ${short(d.found)} ».${didYouMean(d.meant)}`,
			fr`Écrivez time_zone: ${d.meant ?? 'Europe/Paris'}, le nom d’un continent et d’une grande ville.`,
		),
};
