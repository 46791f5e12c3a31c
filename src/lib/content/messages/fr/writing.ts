import type { WRITING as EN } from '../en/writing';
import { quoted, say, short } from '../parts';
import { fr, num } from './voice';

/** How a file is written: YAML, and the lines of hyphens round the short lines of a text. */
export const WRITING: typeof EN = {
	'tab-indent': () =>
		say(
			fr`Cette ligne commence par une tabulation. Ici, les lignes se décalent avec des espaces.`,
			fr`Mettez deux espaces à la place de chaque tabulation.`,
		),
	'odd-space': () =>
		say(
			fr`Cette ligne contient une espace insécable : elle ressemble à une espace, mais n’en est pas une pour le programme qui lit le fichier.`,
			fr`Supprimez cette espace et tapez-la de nouveau ; un texte copié d’une page web ou d’un traitement de texte en apporte.`,
		),
	'bad-indent': () =>
		say(
			fr`Cette ligne, ou celle du dessus, ne commence pas dans la même colonne que les lignes avec lesquelles elle va.`,
			fr`Donnez le même nombre d’espaces aux lignes d’un même niveau, et deux de plus à chaque niveau en dessous.`,
		),
	'unclosed-quote': (d) =>
		say(
			fr`Un guillemet s’ouvre ici avec ${d.quote} et n’est jamais fermé.`,
			fr`Mettez ${d.quote} à la fin du texte, par exemple title: ${d.quote}Sea lizard${d.quote}`,
		),
	'text-after-quote': (d) =>
		say(
			fr`Il y a quelque chose après le guillemet fermant : ${short(d.line)}`,
			fr`Mettez tout le texte dans l’autre sorte de guillemets, par exemple title: '"Sea" lizard' ou title: "The lizard's tooth"`,
		),
	'missing-colon': (d) =>
		say(
			fr`Un deux-points manque dans « ${short(d.line)} » : chaque ligne a un nom, un deux-points, une espace et une valeur.`,
			fr`Écrivez-la ainsi : ${d.meant ?? 'title: Sea lizard'}`,
		),
	'missing-space': (d) =>
		say(
			fr`Il manque une espace après le deux-points dans « ${short(d.found)} ».`,
			fr`Écrivez ${short(d.meant)}`,
		),
	'colon-in-text': (d) =>
		say(
			fr`Ce texte contient un deux-points suivi d’une espace, ce qui commencerait une nouvelle valeur.`,
			fr`Mettez le texte entre guillemets : ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'special-sign': (d) =>
		say(
			fr`Un texte ne peut pas commencer ici par ${d.sign}, car ce signe a un sens particulier.`,
			fr`Mettez le texte entre guillemets, par exemple ${short(d.line, 80)}`,
		),
	'unclosed-bracket': (d) =>
		say(
			fr`Une parenthèse ${d.open} s’ouvre ici, et son ${d.close} manque ou vient après une ligne qui n’est pas décalée.`,
			d.open === '['
				? fr`Fermez-la sur la même ligne : rooms: [compare]`
				: fr`Fermez-la sur la même ligne : { at: 0, shape: oval }`,
		),
	'extra-bracket': () =>
		say(
			fr`Il y a une parenthèse fermante de trop, ou une que rien n’a ouverte.`,
			fr`Comptez-les : à chaque [ son ] et à chaque { son }.`,
		),
	'missing-comma': () =>
		say(
			fr`Il manque une virgule entre { et }.`,
			fr`Mettez une virgule après chaque valeur : { at: 0, shape: oval }`,
		),
	'bad-backslash': () =>
		say(
			fr`Entre guillemets doubles, le signe \\ a un sens particulier.`,
			fr`Employez des guillemets simples pour ce texte : 'one \\ sign', ou écrivez \\\\ pour un seul \\`,
		),
	'second-part': () =>
		say(
			fr`Une ligne de trois tirets commence ici une deuxième partie ; seule la première est utilisée.`,
			fr`Supprimez la ligne de tirets.`,
		),
	'list-on-line': () =>
		say(
			fr`Une liste ne peut pas commencer par un tiret sur la ligne de son nom.`,
			fr`Écrivez la liste entre crochets, par exemple sources: [leidy-1865]`,
		),
	'reference-sign': (d) =>
		say(
			fr`Une valeur commence par ${d.sign}, ce qui renverrait à un autre endroit du fichier ; cela ne sert pas ici.`,
			fr`Si le ${d.sign} fait partie du texte, mettez le texte entre guillemets : title: "${d.sign}Sea lizard"`,
		),
	'duplicate-key': (d) =>
		say(
			fr`« ${short(d.key)} » se trouve ici une deuxième fois ; il est déjà à la ligne ${num(d.firstLine)}.`,
			fr`Gardez l’un des deux et supprimez l’autre.`,
		),
	'line-not-understood': (d) =>
		say(
			fr`Cette ligne n’a pas pu être comprise : ${short(d.line)}`,
			fr`Chaque ligne a un nom, un deux-points, une espace et une valeur. Un texte avec des signes particuliers se met entre guillemets : title: "Sea lizard"`,
		),
	'hash-cuts-text': (d) =>
		say(
			fr`Tout ce qui suit le signe # est pris pour une note et n’est pas montré : ${short(d.text)}`,
			fr`Si cela fait partie du texte, mettez le texte entre guillemets : ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'too-deep': () =>
		say(
			fr`Les valeurs sont emboîtées ici sur trop de niveaux.`,
			fr`Comparez le fichier avec le même genre de fichier d’un autre spécimen.`,
		),
	'no-top-lines': (d) =>
		say(
			fr`Le fichier ne commence pas par une ligne de trois tirets (---).`,
			fr`Commencez le fichier par ---, puis les lignes courtes (${d.example}), puis encore ---, puis le texte.`,
		),
	'top-lines-not-closed': () =>
		say(
			fr`La deuxième ligne de trois tirets (---) manque.`,
			fr`Mettez --- seul sur une ligne entre les lignes courtes et le texte.`,
		),
};
