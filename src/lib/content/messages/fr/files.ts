import type { FILES as EN } from '../en/files';
import type { Holds } from '../codes';
import { say, short } from '../parts';
import { count, didYouMean, fr, list, num, tongue } from './voice';

const KIND = { bed: 'de la couche', group: 'du groupe', specimen: 'du spécimen' } as const;
const THE = { bed: 'La couche', group: 'Le groupe', specimen: 'Le spécimen' } as const;

/** What a missing file holds, in words. */
const holds = (what: Holds): string =>
	typeof what === 'object'
		? fr`les données ${KIND[what.of]} ${what.id}, qui ne paraît donc pas dans l’exposition`
		: {
				exhibit: 'le nom du musée, les langues, les salles et l’écran',
				sources: 'les travaux publiés d’où viennent les nombres et les affirmations',
				'screen-words': 'les mots des boutons et des écrans dans la première langue',
			}[what];

/** Files and folders: what is missing, misnamed, unreadable or not translated. */
export const FILES: typeof EN = {
	'folder-unreadable': (d) =>
		say(
			fr`Le contenu du dossier n’a pas pu être lu (${short(d.reason)}).`,
			fr`Vérifiez que le dossier existe et que cet ordinateur a le droit de le lire.`,
		),
	'missing-file': (d) =>
		say(
			fr`Le fichier ${d.file} manque. Il contient ${holds(d.holds)}.`,
			fr`Créez le fichier ${d.file} ; pour commencer, copiez celui de l’exposition d’exemple.`,
		),
	'unreadable-file': (d) =>
		say(
			fr`Le fichier n’a pas pu être lu (${short(d.reason)}).`,
			fr`Fermez-le dans les autres programmes et vérifiez que cet ordinateur a le droit de le lire.`,
		),
	'file-too-large': (d) =>
		say(
			fr`Le fichier fait ${num(d.size_kB)} ko ; un fichier de texte peut faire ici ${num(d.most_kB)} ko au plus.`,
			fr`Vérifiez que c’est le bon fichier : les mots d’un spécimen tiennent en quelques ko.`,
		),
	'empty-file': (d) =>
		say(fr`Le fichier est vide.`, fr`Remplissez-le ou supprimez-le. Il commence ainsi : ${d.example}`),
	'not-utf8': () =>
		say(
			fr`Le fichier n’est pas enregistré en UTF-8 : les lettres comme é ou ñ ne peuvent pas être lues.`,
			fr`Enregistrez-le de nouveau avec l’encodage UTF-8 (dans le Bloc-notes : Enregistrer sous, Encodage : UTF-8).`,
		),
	'not-text': () =>
		say(
			fr`Le fichier contient des signes qui ne sont pas du texte.`,
			fr`Ouvrez-le dans un éditeur de texte et enregistrez-le comme texte simple avec l’encodage UTF-8.`,
		),
	'not-understood': (d) =>
		say(
			fr`Le fichier n’a pas pu être compris (${short(d.reason)}).`,
			fr`Comparez-le avec le même genre de fichier d’un autre spécimen, ou repartez d’une copie.`,
		),
	'too-many-problems': (d) =>
		say(
			fr`Ce fichier a encore ${count(d.left, 'autre problème', 'autres problèmes')}.`,
			fr`Corrigez d’abord ceux du dessus ; la plupart des autres disparaîtront aussi.`,
		),
	'unknown-file': (d) =>
		say(
			fr`L’exposition n’utilise pas ce fichier.${didYouMean(d.meant)}`,
			d.meant
				? fr`Renommez-le en ${d.meant}, ou sortez-le du dossier de contenu.`
				: fr`Sortez-le du dossier de contenu, ou vérifiez son nom et son dossier.`,
		),
	'wrong-ending': (d) =>
		say(fr`Le nom finit par ${d.found}, le fichier n’est donc pas utilisé.`, fr`Renommez-le en ${d.name}`),
	'bad-name': (d) =>
		say(
			fr`« ${short(d.found)} » ne peut pas servir de nom ici : un nom n’a que des minuscules de a à z, des chiffres et des tirets isolés.`,
			fr`Renommez-le, par exemple en ${d.meant}`,
		),
	'bad-id': (d) =>
		say(
			fr`« ${short(d.found)} » ne peut pas servir d’identifiant : un identifiant n’a que des minuscules de a à z, des chiffres et des tirets isolés.`,
			fr`Écrivez-le ainsi : ${d.meant}`,
		),
	'no-language-code': (d) =>
		say(
			fr`Le nom ne dit pas de quelle langue il s’agit.`,
			fr`Mettez la langue avant la terminaison : ${d.name}`,
		),
	'wrong-language-code': (d) =>
		say(
			fr`« ${d.found} » n’est pas une langue de cette exposition. Celles d’exhibit.yaml sont ${list(d.codes, 'and')}.`,
			d.meant ? fr`Renommez le fichier en ${d.name}` : fr`Renommez le fichier, par exemple en ${d.name}`,
		),
	'language-not-shown': (d) =>
		say(
			fr`Ce fichier est en « ${d.found} », une langue que l’exposition ne montre pas. Celles d’exhibit.yaml sont ${list(d.codes, 'and')}.`,
			fr`Pour la montrer, ajoutez une ligne sous languages dans exhibit.yaml : - { code: ${d.found}, name: (son propre nom) }`,
		),
	'missing-text': (d) =>
		say(
			fr`${THE[d.of]} ${d.id} n’a pas de texte utilisable dans la première langue (${tongue(d.language)}) et ne paraît donc pas dans l’exposition.`,
			fr`Écrivez ${d.file} ; pour commencer, copiez le même fichier d’un autre.`,
		),
	'missing-translation': (d) =>
		say(
			fr`Il n’y a pas ici de texte utilisable en ${tongue(d.language)} ; les visiteurs qui lisent cette langue voient à la place ${d.part === 'text' ? 'le texte' : 'les mots'} en ${tongue(d.first)}.`,
			fr`Copiez ${d.file} sous ce nom et traduisez-le.`,
		),
};
