import type { MEASURED as EN } from '../en/measured';
import type { Doubt } from '../codes';
import { exampleFor } from '../examples';
import { say } from '../parts';
import { count, fr, MARKS, num, UNIT_NAMES } from './voice';

/** Why a scan is hardly one tooth. */
function because(doubt: Doubt | undefined): string {
	if (!doubt) return '.';
	if (doubt.is === 'pieces')
		return fr` : il a ${count(doubt.n, 'morceau séparé', 'morceaux séparés')} de taille semblable.`;
	if (doubt.is === 'openings')
		return fr` : il a ${count(doubt.n, 'ouverture', 'ouvertures')} de part en part et de larges creux, comme un crâne ou une mâchoire.`;
	return doubt.is === 'hollow'
		? fr` : la plus grande partie de l’espace qu’il occupe est vide.`
		: fr` : coupé en travers, il se sépare en cinq parties ou plus, comme une rangée de dents.`;
}

/** Scans that were measured. */
export const MEASURED: typeof EN = {
	'scan-unit': (d) =>
		say(
			fr`La fiche dit ${d.key}: ${d.says}, mais lu en ${UNIT_NAMES[d.units]}, le scan mesure ${num(d.is)} mm : les nombres du fichier semblent être en ${UNIT_NAMES[d.meant]}.`,
			fr`Écrivez units: ${d.meant}`,
		),
	'unlike-the-card': (d) =>
		say(
			fr`La fiche dit ${d.key}: ${d.says}, mais la forme mesure ${num(d.is)} mm.`,
			fr`Mesurez de nouveau la dent, et vérifiez que le nombre, le scan et ses repères sont ceux de la même dent.`,
		),
	'unlikely-size': (d) =>
		say(
			fr`Lue en ${UNIT_NAMES[d.units]}, cette couronne a ${num(d.height_mm)} mm de haut, ce qui est peu vraisemblable pour une dent.`,
			fr`Demandez à l’auteur du scan l’unité de ses nombres : units: mm, cm, m, um ou in.`,
		),
	'crown-base-not-marked': () =>
		say(
			fr`Rien ne dit où finit la couronne et où commence la racine ; toute la pièce a donc été mesurée comme une couronne.`,
			fr`Marquez la pointe et la base au bureau, ou écrivez sous scan: ${exampleFor('crown')}`,
		),
	'not-one-tooth': (d) =>
		say(
			fr`Ce n’est guère une seule dent, et les mesures d’une couronne veulent dire peu de choses${because(d.doubt)}`,
			fr`Découpez-en une seule dent dans le programme qui a fait le scan, ou marquez sa couronne : les repères font foi.`,
		),
	'several-pieces': () =>
		say(
			fr`Le scan est en plusieurs morceaux séparés ; tous ont été mesurés ensemble.`,
			fr`Supprimez ce qui n’est pas la dent (support, pâte, débris) dans le programme qui a fait le scan.`,
		),
	'colour-unreadable': () =>
		say(
			fr`L’image qui colore la surface du scan ne peut pas servir. La dent est montrée dans la couleur de sa conservation.`,
			fr`Enregistrez de nouveau le scan en GLB avec son image dedans, en JPEG ou PNG de 8192 x 8192 pixels au plus ; ou écrivez sous scan: colour: plain`,
		),
	'coarse-mesh': () =>
		say(
			fr`Le scan a si peu de triangles que ses mesures sont grossières.`,
			fr`Enregistrez-le de nouveau avec plus de triangles : ${num(40_000)} montrent bien une dent entière.`,
		),
	'mark-off-surface': (d) =>
		say(
			fr`Un repère de la couronne (${MARKS[d.mark]}) est à ${num(d.gap_mm)} mm de la surface du scan.`,
			fr`Placez-le de nouveau au bureau. À la main : les repères sont en millimètres, dans les axes du scan, quelle que soit son unité.`,
		),
};
