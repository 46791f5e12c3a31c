import type { VALUES as EN } from '../en/values';
import { exampleAt, exampleFor } from '../examples';
import { atLeast, atMost, lastKey, roundedDown, roundedUp, say, short } from '../parts';
import { fr, list, MARKS, nameOf, num, shown } from './voice';

/** The values behind the names. */
export const VALUES: typeof EN = {
	'empty-value': (d) =>
		say(
			fr`Il n’y a pas de valeur pour ${nameOf(d.path)}.`,
			fr`Écrivez-en une, par exemple ${exampleAt(d.path)}`,
		),
	'decimal-comma': (d) =>
		say(
			fr`« ${shown(d.found)} » a une virgule décimale ; ici, les nombres ont un point décimal.`,
			fr`Écrivez ${lastKey(d.path)}: ${d.meant}`,
		),
	'number-with-unit': (d) =>
		say(
			fr`« ${short(shown(d.found))} » contient une unité ; la valeur est un nombre seul${d.unit ? `, et ${d.unit} est dans son nom` : ''}.`,
			d.meant ? fr`Écrivez ${lastKey(d.path)}: ${d.meant}` : fr`Écrivez ${exampleAt(d.path)}`,
		),
	'number-in-quotes': (d) =>
		say(
			fr`« ${shown(d.found)} » est entre guillemets, ce qui en fait un texte ; il faut un nombre.`,
			fr`Écrivez ${lastKey(d.path)}: ${shown(d.found).trim()}`,
		),
	'not-a-number': (d) =>
		say(
			fr`Il faut ici un nombre, mais il y a « ${short(shown(d.found))} ».`,
			fr`Écrivez ${exampleAt(d.path)}`,
		),
	'not-whole': (d) =>
		say(
			fr`Il faut ici un nombre entier, mais il y a ${shown(d.found)}.`,
			fr`Écrivez ${lastKey(d.path)}: ${d.meant}`,
		),
	'out-of-range': (d) => {
		const name = lastKey(d.path);
		const least = d.min === undefined ? '' : atLeast(d.min);
		const most = d.max === undefined ? '' : atMost(d.max);
		const low = d.min === undefined ? '' : num(roundedUp(d.min));
		const high = d.max === undefined ? '' : num(roundedDown(d.max));
		const range = low && high ? `de ${low} à ${high}` : high ? `${high} au plus` : `${low} au moins`;
		const near = least && (Number(d.found) < Number(least) || !most) ? least : most;
		const found = Number.isFinite(Number(d.found)) ? num(Number(d.found)) : shown(d.found);
		return say(
			fr`${name} vaut ${found} ; valeurs possibles : ${range}.`,
			fr`Vérifiez le nombre et son unité ; la valeur possible la plus proche est ${name}: ${near}`,
		);
	},
	'not-a-point': (d) =>
		say(
			fr`${lastKey(d.path)} s’écrit avec trois nombres entre crochets, mais il y a ${short(shown(d.found))}.`,
			fr`Écrivez ${exampleAt(d.path)}, avec des points décimaux`,
		),
	'marks-coincide': (d) =>
		say(
			fr`Deux repères de la couronne sont au même endroit : ${MARKS[d.first]} et ${MARKS[d.second]}.`,
			fr`Placez chacun à son endroit : l’apex est la pointe, les points de la base sont l’avant et l’arrière de la base de la couronne.`,
		),
	'no-direction': () =>
		say(
			fr`labial est une direction, et trois zéros ne montrent nulle part.`,
			fr`Écrivez vers où regarde le côté de la lèvre dans le scan, par exemple ${exampleFor('labial')}, ou supprimez la ligne.`,
		),
	'not-yes-no': (d) =>
		say(
			fr`Il faut ici true ou false, mais il y a « ${short(shown(d.found))} ».`,
			d.meant === undefined
				? fr`Écrivez ${exampleAt(d.path)}`
				: fr`Écrivez ${lastKey(d.path)}: ${String(d.meant)}`,
		),
	'text-needs-quotes': (d) =>
		say(
			fr`Il faut ici un texte, mais ${short(shown(d.found))} est pris pour un nombre ou pour true ou false.`,
			fr`Mettez-le entre guillemets : ${lastKey(d.path)}: "${short(shown(d.found))}"`,
		),
	'not-one-text': (d) =>
		say(
			fr`Il faut un seul texte pour ${nameOf(d.path)}, mais il y a plusieurs valeurs.`,
			fr`Écrivez ${exampleAt(d.path)}`,
		),
	'not-a-list': (d) =>
		say(
			fr`Il faut une liste pour ${nameOf(d.path)}, mais il y a une seule valeur.`,
			fr`Mettez-la entre crochets, par exemple ${exampleAt(d.path)}`,
		),
	'list-empty': (d) =>
		say(
			fr`La liste ${nameOf(d.path)} est vide ; il y faut au moins un élément.`,
			fr`Écrivez ${exampleAt(d.path)}`,
		),
	'not-fields': (d) =>
		say(
			fr`Il faut des lignes de la forme « nom: valeur » pour ${nameOf(d.path)}.`,
			fr`Écrivez-les ainsi : ${d.example}`,
		),
	'wrong-choice': (d) =>
		say(
			fr`« ${short(shown(d.found))} » n’est pas possible pour ${lastKey(d.path)} : c’est ${list(d.choices)}.`,
			d.meant ? fr`Vouliez-vous écrire ${lastKey(d.path)}: ${d.meant} ?` : fr`Écrivez ${exampleAt(d.path)}`,
		),
	'not-a-side': (d) =>
		say(
			fr`« ${short(shown(d.found))} » n’est pas un côté d’une dent : c’est mesial, distal, labial ou lingual, ou des degrés (0 distal, 90 labial, 180 mesial, 270 lingual).`,
			fr`Écrivez where: ${d.meant ?? 'distal'}`,
		),
	'unknown-room': (d) =>
		say(
			fr`Il n’y a pas de salle « ${short(d.found)} ». Les salles sont ${list(d.choices, 'and')}.`,
			d.meant
				? fr`Vouliez-vous écrire ${d.meant} ?`
				: fr`Supprimez-la, ou écrivez l’une de celles-ci, par exemple rooms: [compare]`,
		),
	'bad-code': (d) =>
		say(
			fr`« ${short(d.found)} » n’est pas un code de langue : il a deux minuscules (trois quand une langue n’en a pas de deux).`,
			fr`Écrivez code: ${d.meant ?? 'en'}`,
		),
	'bad-licence': (d) =>
		say(
			fr`« ${short(d.found, 90)} » n’est pas l’adresse d’une licence Creative Commons ni d’une déclaration de RightsStatements.org.`,
			d.meant
				? fr`Écrivez licence: ${d.meant}`
				: fr`Écrivez l’adresse http jusqu’à sa dernière barre : ${exampleFor('licence')}`,
		),
	'bad-address': (d) =>
		say(
			{
				unreadable: fr`« ${short(d.found)} » n’est pas une adresse web.`,
				'not-https': fr`« ${short(d.found)} » ne commence pas par https:// ; les téléphones mettraient les visiteurs en garde.`,
				name: fr`« ${short(d.found)} » contient un nom d’utilisateur ou un mot de passe, que tout le monde pourrait lire à l’écran.`,
				more: fr`« ${short(d.found)} » continue après un ? ou un # ; l’écran ajoute lui-même une telle fin.`,
			}[d.why],
			fr`Écrivez l’adresse de la page d’accueil, par exemple ${exampleFor('public_address')}`,
		),
	'bad-doi': (d) =>
		say(
			fr`« ${short(d.found)} » n’est pas un DOI ; un DOI commence par 10.`,
			fr`Écrivez ${d.meant ? `doi: ${d.meant}` : exampleFor('doi')}`,
		),
	'ages-swapped': (d) =>
		say(
			fr`L’âge le plus récent (${num(d.youngest)}) est plus ancien que le plus ancien (${num(d.oldest)}) ; les âges sont en millions d’années.`,
			fr`Échangez-les : oldest_ma: ${d.youngest} et youngest_ma: ${d.oldest}`,
		),
	'idle-too-short': (d) =>
		say(
			fr`Après ${num(d.found)} secondes sans contact, l’écran demande s’il y a quelqu’un ; une personne qui lit lentement n’a alors pas fini.`,
			fr`Écrivez warn_after_s: ${d.least} ou plus.`,
		),
	'warning-too-short': (d) =>
		say(
			fr`Les visiteurs ont ${num(d.found)} secondes pour dire qu’ils sont encore là ; à certains, il en faut au moins 20.`,
			fr`Écrivez reset_after_warning_s: 20 ou plus.`,
		),
};
