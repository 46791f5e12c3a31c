import type { ANIMALS as EN } from '../en/animals';
import type { DrawingFault } from '../codes';
import { exampleFor } from '../examples';
import { number, say } from '../parts';
import { count, fr, num } from './voice';

const FAULTS: Readonly<Record<Exclude<DrawingFault, 'part'>, string>> = {
	script: 'un script',
	style: 'un style',
	link: 'un lien',
	picture: 'une image',
	lettering: 'des lettres',
	rectangle: 'un rectangle',
	circle: 'un cercle',
	ellipse: 'une ellipse',
	line: 'une ligne',
	polygon: 'un polygone',
	transform: 'une transformation',
};

/** The animal behind a tooth: its outline (`groups/<id>.svg`), its length, its short lines. */
export const ANIMALS: typeof EN = {
	'drawing-not-svg': () =>
		say(
			fr`Le dessin n’est pas un fichier SVG, ou une partie n’en est pas fermée.`,
			fr`Enregistrez de nouveau la silhouette en « SVG simple » dans votre programme de dessin.`,
		),
	'drawing-forbidden': (d) =>
		say(
			fr`Le dessin contient ${d.what === 'part' ? fr`un élément du type « ${d.name ?? ''} »` : FAULTS[d.what]} ; seuls les contours (tracés) servent ici.`,
			fr`Transformez tout en tracés dans votre programme de dessin, sans effets, et enregistrez en « SVG simple ».`,
		),
	'drawing-viewbox': () =>
		say(
			fr`Le dessin ne dit pas la taille de sa feuille : viewBox manque, ou n’a pas quatre nombres.`,
			fr`Écrivez viewBox="0 0 1000 200" : gauche, haut, largeur, hauteur. La largeur est la longueur de l’animal, du museau au bout de la queue.`,
		),
	'drawing-no-path': () =>
		say(
			fr`Le dessin ne contient pas de contour.`,
			fr`Dessinez la silhouette comme un tracé, ou sortez le fichier de groups/ et aucune silhouette n’est montrée.`,
		),
	'drawing-bad-path': (d) =>
		say(
			fr`Les données du tracé ${num(d.path)} ne peuvent pas être lues à « ${d.found.replace(/"/g, "'")} ».`,
			fr`Enregistrez de nouveau la silhouette en « SVG simple » ; un tracé s’écrit avec des lettres et des nombres, par exemple M0 0L10 5Z`,
		),
	'drawing-too-detailed': (d) =>
		say(
			fr`La silhouette a ${count(d.characters, 'signe', 'signes')} de tracé ; ${num(d.most)} est le maximum.`,
			fr`Simplifiez le tracé dans votre programme de dessin : 30 à 100 points suffisent largement.`,
		),
	'length-empty': () =>
		say(
			fr`length_m ne donne ni longueur courante ni longueur maximale.`,
			fr`Écrivez au moins l’une des deux : ${exampleFor('length_m')}`,
		),
	'lengths-swapped': (d) =>
		say(
			fr`La longueur courante (${num(d.typical)} m) dépasse la plus grande (${num(d.largest)} m).`,
			fr`Échangez-les : typical: ${number(d.largest)} et largest: ${number(d.typical)}`,
		),
	'long-line': (d) =>
		say(
			fr`${d.key} a ${count(d.words, 'mot', 'mots')} ; ${num(d.most)} est le maximum pour une ligne qui se lit d’un coup d’œil.`,
			fr`Ne gardez que le plus important.`,
		),
};
