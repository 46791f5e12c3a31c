import type { SCREENS as EN } from '../en/screens';
import { say } from '../parts';
import { fr } from './voice';

/** screens.yaml */
export const SCREENS: typeof EN = {
	'bad-time': (d) =>
		say(
			fr`« ${d.found} » n’est pas une heure : une heure s’écrit avec heures et minutes, de 0:00 à 24:00.`,
			fr`Écrivez ${d.key}: ${d.meant ?? '18:00'}`,
		),
	'screen-name-own': () =>
		say(
			fr`« own » désigne l’appareil d’un visiteur ; aucun écran de la galerie ne peut porter ce nom.`,
			fr`Donnez un autre nom à l’écran, par exemple gallery-wall:`,
		),
	'screen-room-not-shown': (d) =>
		say(
			fr`exhibit.yaml ne montre pas la salle ${d.found} ; cet écran ne la montre donc pas non plus.`,
			fr`Ajoutez-la sous rooms dans exhibit.yaml, ou tenez-vous-en ici à ${d.rooms.join(', ')}.`,
		),
	'screen-without-rooms': (d) =>
		say(
			fr`Aucune de ces salles n’est montrée dans exhibit.yaml ; cet écran montre donc toutes celles qui le sont.`,
			fr`Écrivez-en quelques-unes, par exemple rooms: [${d.rooms[0]}]`,
		),
	'screen-language-unknown': (d) =>
		say(
			fr`« ${d.found} » n’est pas une langue de cette exposition ; l’écran commence donc avec « ${d.codes[0]} ».`,
			fr`Écrivez l’un de ces codes : ${d.codes.join(', ')}, par exemple first_language: ${d.codes[d.codes.length - 1]}`,
		),
	'screen-title-twice': (d) =>
		say(
			fr`Deux écrans s’appellent « ${d.found} » : celui-ci et ${d.other}. Le personnel ne pourrait pas les distinguer.`,
			fr`Dites dans le titre où se trouve chacun, par exemple title: Gallery wall, left`,
		),
	'screen-day-twice': (d) =>
		say(
			fr`${d.found} se trouve plusieurs fois dans les heures de cet écran ; c’est la première fois qui compte.`,
			fr`Nommez une seule fois chaque jour de la semaine.`,
		),
	'screen-dim-outside': (d) =>
		say(
			fr`L’écran devrait s’assombrir à ${d.found}, mais il est allumé de ${d.from} à ${d.until}.`,
			fr`Écrivez une heure entre les deux, ou supprimez dim_from.`,
		),
};
