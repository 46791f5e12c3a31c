import type { FEEDING as EN } from '../en/feeding';
import type { FeedingLoss } from '../codes';
import { say, short } from '../parts';
import { fr, num, tongue } from './voice';

/** What cannot be shown without a file. */
const LOSSES: Readonly<Record<FeedingLoss, string>> = {
	room: 'la salle sur la nourriture n’est pas montrée',
	prey: 'aucune proie n’est montrée',
	guilds: 'aucune guilde n’est nommée',
	ridges: 'rien n’est dit des crêtes',
	everyday: 'les forces ne sont pas comparées à des choses de tous les jours',
};

/** The folder `feeding/`. */
export const FEEDING: typeof EN = {
	'number-not-marked': (d) =>
		say(
			fr`Ce nombre repose sur « ${d.source} », qui n’est cité que de mémoire ; l’écran le signale.`,
			fr`Écrivez tag: memory à côté, ou cherchez le nombre et donnez sa source.`,
		),
	'low-high-swapped': (d) =>
		say(
			fr`low, value et high ne vont pas en montant : ${num(d.low)} ; ${num(d.value)} ; ${num(d.high)}.`,
			fr`Écrivez le plus petit sous low, le plus grand sous high, et la valeur entre les deux.`,
		),
	'band-swapped': (d) =>
		say(
			fr`L’intervalle va de ${num(d.from)} à ${num(d.to)} : rien ne s’y trouve.`,
			fr`Échangez-les : { from: ${d.to}, to: ${d.from} }`,
		),
	'unknown-guild': (d) =>
		say(
			fr`Il n’y a pas de guilde « ${short(d.found)} ». Celles qui sont publiées sont ${d.known.join(', ')}.`,
			d.meant
				? fr`Écrivez ${d.meant}: à la place de ${short(d.found)}:`
				: fr`Supprimez-la, ou prenez l’un de ces noms.`,
		),
	'unknown-material': (d) =>
		say(
			fr`Il n’y a pas de matière utilisable « ${short(d.found)} » dans feeding/materials.yaml ; cette proie n’est donc pas montrée.`,
			d.meant
				? fr`Écrivez material: ${d.meant}`
				: fr`Ajoutez-la à materials.yaml, ou écrivez un identifiant qui s’y trouve.`,
		),
	'elastic-half': () =>
		say(
			fr`stiffness_gpa et poisson vont ensemble ; l’un des deux manque.`,
			fr`Donnez les deux, ou supprimez celui qui est là.`,
		),
	'jaw-stops': () =>
		say(
			fr`Les stops d’une mâchoire montent de at: 0 (l’avant) à at: 1 (l’arrière) ; ceux-ci ne le font pas.`,
			fr`Écrivez au moins deux stops, dans l’ordre : le premier at: 0, le dernier at: 1.`,
		),
	'feeding-part-missing': (d) =>
		say(
			fr`${d.file} manque ou ne peut pas servir : ${LOSSES[d.without]}.`,
			fr`Créez le fichier, ou copiez ${d.file} de l’exposition d’exemple.`,
		),
	'feeding-words-missing': (d) =>
		say(
			fr`« ${d.key} » n’a pas de mots utilisables dans la première langue (${tongue(d.language)}) et n’est donc pas montré.`,
			fr`Ajoutez-les à ${d.file} ; pour commencer, copiez ceux d’un autre.`,
		),
	'everyday-count': (d) =>
		say(
			fr`Ce texte doit contenir {count} et aucun autre mot à compléter : ${short(d.found)}`,
			fr`Écrivez-le ainsi : "{count, plural, one {# apple} other {# apples}}"`,
		),
};
