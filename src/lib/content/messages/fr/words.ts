import type { WORDS as EN } from '../en/words';
import type { MessageFault } from '../codes';
import { exampleFor } from '../examples';
import { say, short } from '../parts';
import { count, fr, num, tongue } from './voice';

const MESSAGE_FAULTS: Readonly<Record<MessageFault, string>> = {
	'brace-open': 'il manque un } fermant',
	'apostrophe-open': 'une apostrophe s’ouvre et n’est jamais fermée',
	'brace-empty': 'il n’y a rien entre { et }',
	'bad-filler': 'le nom entre { et } est un seul mot, de lettres, de chiffres et de _',
	'no-type': 'il manque number, plural ou select après la virgule',
	'bad-type': 'seuls number, plural ou select peuvent suivre la virgule',
	'no-other': 'il manque le choix other {…}',
	'bad-choices': 'les choix s’écrivent {count, plural, one {# tooth} other {# teeth}}',
	tag: 'un < suivi d’une lettre n’est pas possible ici',
};

/** Words for visitors. */
export const WORDS: typeof EN = {
	'alt-missing': () =>
		say(
			fr`alt manque : il dit ce que montre l’image aux personnes qui ne la voient pas. La ligne courte est lue à la place.`,
			fr`Ajoutez une ligne comme ${exampleFor('alt')}`,
		),
	'alt-repeats-title': () =>
		say(
			fr`alt répète le titre ; il doit dire ce que l’on peut voir.`,
			fr`Décrivez la forme et la couleur, par exemple ${exampleFor('alt')}`,
		),
	'long-sentence': (d) =>
		say(
			fr`Cette phrase a ${count(d.words, 'mot', 'mots')} ; les visiteurs n’en lisent pas plus de ${num(d.most)} sans peine : ${d.begins}`,
			fr`Faites-en deux phrases.`,
		),
	'long-label': (d) =>
		say(
			fr`Le texte a ${count(d.words, 'mot', 'mots')} ; debout, les visiteurs n’en lisent pas plus de ${num(d.most)}.`,
			fr`Laissez de côté ce que la dent elle-même montre.`,
		),
	'hard-to-read': (d) =>
		say(
			fr`Le texte est difficile à lire : sa lisibilité est de ${num(d.ease)}, sur une échelle de 0 (très difficile) à 100 (très facile) ; il faut ici ${num(d.least)} ou plus.`,
			fr`Faites des phrases courtes et remplacez les mots longs par des mots de tous les jours. Puis lisez-le à voix haute.`,
		),
	'too-certain': (d) =>
		say(
			fr`« ${d.word} » ne laisse aucun doute ; une dent ancienne apprend peu de choses avec tant de certitude.`,
			fr`Si d’autres peuvent en juger autrement, écrivez ${{ fr: fr`« laisse penser » ou « peut-être »`, es: fr`« sugiere » ou « quizá »` }[d.language] ?? fr`« suggests » ou « may »`}. Sinon, laissez-le tel quel.`,
		),
	'number-without-source': (d) =>
		say(
			fr`Le texte dit « ${short(d.found)} », mais ${d.file} ne nomme pas de source pour cela.`,
			fr`Nommez qui le dit, par exemple ${exampleFor('sources')}, ou retirez le nombre.`,
		),
	'picture-left-out': () =>
		say(
			fr`Les images dans le texte ne sont pas montrées : l’image, c’est la dent elle-même.`,
			fr`Supprimez la partie qui ressemble à ![mots](adresse)`,
		),
	'code-shown-as-text': (d) =>
		say(
			fr`${short(d.found, 30)} serait montré lettre par lettre ; seul Markdown est compris ici.`,
			fr`Employez des *étoiles* pour l’italique et **deux étoiles** pour le gras.`,
		),
	'text-not-shown': () =>
		say(
			fr`Le texte sous les lignes courtes n’est pas montré pour ce genre de fichier.`,
			fr`Mettez l’important dans la ligne short: et supprimez le reste.`,
		),
	'bad-message': (d) =>
		say(
			fr`Ce texte ne peut pas être complété : ${MESSAGE_FAULTS[d.why]}.`,
			fr`Écrivez chaque mot à compléter entre ses propres accolades, par exemple "{count} teeth". Trouvé : ${short(d.found, 80)}`,
		),
	'placeholder-mismatch': (d) =>
		say(
			fr`Les mots entre accolades ne sont pas ceux du texte en ${tongue(d.language)} : ${[
				...(d.missing.length
					? [`${d.missing.join(', ')} ${d.missing.length === 1 ? 'manque' : 'manquent'}`]
					: []),
				...(d.extra.length
					? [`${d.extra.join(', ')} ${d.extra.length === 1 ? 'n’y est pas' : 'n’y sont pas'}`]
					: []),
			].join(fr` ; `)}. Le texte en ${tongue(d.language)} est montré à la place.`,
			d.missing.length
				? fr`Gardez ${d.missing.join(' et ')} exactement comme dans le texte en ${tongue(d.language)}.`
				: fr`Enlevez ${d.extra.join(' et ')}.`,
		),
	'text-not-translated': (d) =>
		say(
			fr`« ${d.key} » n’est pas traduit ; les visiteurs voient le texte en ${tongue(d.language)}.`,
			fr`Ajoutez une ligne ${d.key}: avec la traduction de « ${short(d.shown)} »`,
		),
	'text-not-used': (d) =>
		say(
			fr`« ${short(d.key)} » ne se trouve pas dans ${d.file} et n’est donc pas montré.${d.meant ? fr` Vouliez-vous écrire ${d.meant} ?` : ''}`,
			d.meant
				? fr`Écrivez ${d.meant} à la place de ${short(d.key)}.`
				: fr`Supprimez la ligne, ou ajoutez-la d’abord à ${d.file}.`,
		),
};
