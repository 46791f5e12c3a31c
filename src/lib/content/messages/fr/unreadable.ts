import type { UNREADABLE as EN } from '../en/unreadable';
import type { MeasureAdvice, MeasureFaultCode, ScanFaultCode } from '../codes';
import { say } from '../parts';
import { fr, num } from './voice';

const name = (scan: string | null) => (scan === null ? 'Le modèle' : `Le scan ${scan}`);

const ADVICE: Readonly<Record<MeasureAdvice, string>> = {
	mark: 'Marquez la pointe et la base de sa couronne au bureau. Vérifiez que le fichier contient une seule dent et que son unité est la bonne.',
	'check-marks': fr`Vérifiez les repères sous crown: ils sont en millimètres, dans les axes du scan. Vérifiez aussi son unité.`,
	'check-file': fr`Vérifiez que le fichier contient une seule dent avec sa couronne, et rien d’autre, et que son unité est la bonne : units: mm`,
};

const NO_MEASURE: Readonly<Record<MeasureFaultCode, string>> = {
	empty: 'il n’a pas de triangles.',
	'not-a-number': 'un de ses points n’a pas de place.',
	'bad-index': 'un de ses triangles emploie un point qui n’existe pas.',
	'no-area': 'sa surface est sans étendue.',
	'no-base': 'la base de la couronne n’a pas été trouvée.',
	'no-height': 'la pointe n’est pas au-dessus de la base.',
};

const AGAIN =
	'Copiez-le de nouveau depuis l’endroit où il a été fait, ou enregistrez-le de nouveau dans le programme qui l’a fait.';
const REPAIR = 'Réparez la surface dans le programme qui a fait le scan, puis enregistrez-la de nouveau.';

/** What was found, then what to do. */
const FAULTS: Readonly<Record<ScanFaultCode, readonly [string, string]>> = {
	empty: ['il est vide.', 'Copiez-le de nouveau depuis l’endroit où il a été fait.'],
	truncated: [fr`il s’arrête avant la fin ; une partie manque.`, AGAIN],
	'not-a-mesh': [
		'ce n’est pas ce que dit son nom.',
		fr`Vérifiez que c’est bien le scan lui-même, enregistré en GLB, STL, PLY ou OBJ.`,
	],
	'unknown-format': [
		'cette sorte de fichier ne peut pas être lue.',
		'Enregistrez le scan en GLB, STL, PLY ou OBJ, et gardez la terminaison que le programme lui donne.',
	],
	'unit-missing': [
		'rien ne dit en quelle unité sont ses nombres.',
		fr`Dites en quelle unité sont ses nombres, par exemple units: mm ; demandez à l’auteur du scan.`,
	],
	'count-lies': ['il annonce un nombre d’éléments qui n’est pas le vrai.', AGAIN],
	damaged: ['il est abîmé.', AGAIN],
	'not-a-number': ['un de ses points a une valeur qui n’est pas un nombre possible.', REPAIR],
	'index-out-of-range': ['un de ses triangles emploie un point qui n’existe pas.', REPAIR],
	'no-triangles': [
		'il n’a pas de triangles, donc pas de surface.',
		'Faites-en une surface (un maillage) dans le programme qui a fait le scan, et enregistrez-la.',
	],
	'no-area': [
		'ses triangles n’ont pas d’étendue.',
		'Vérifiez les réglages d’exportation du programme qui a fait le scan, et enregistrez-le de nouveau.',
	],
	'loose-triangles': [
		'ses triangles ne sont pas reliés entre eux.',
		'Reliez (soudez) la surface dans le programme qui a fait le scan, et enregistrez-la de nouveau.',
	],
	'too-large': [
		'il est plus grand que ce qui peut être lu.',
		fr`Enregistrez le scan avec moins de triangles : un demi-million montre chaque détail d’une dent.`,
	],
	'compressed-unreadable': [
		'il est compressé d’une façon qui ne peut pas être lue.',
		'Enregistrez-le de nouveau sans compression, ou en STL.',
	],
	'feature-unknown': [
		'il emploie une extension inconnue.',
		'Enregistrez-le de nouveau en GLB simple sans extension, ou en STL.',
	],
	'nested-too-deep': [
		'ses parties sont emboîtées sur trop de niveaux.',
		'Enregistrez-le de nouveau comme un seul maillage simple, par exemple en STL.',
	],
	'external-file-missing': [
		'il a besoin d’un autre fichier, qui n’est pas là.',
		'Copiez ce fichier dans le même dossier, ou enregistrez le scan en GLB, qui contient tout.',
	],
};

/** Shapes that could not be read, measured or prepared. */
export const UNREADABLE: typeof EN = {
	'scan-not-there': (d) =>
		say(
			fr`${name(d.scan)} n’est pas là, ou change en ce moment même.`,
			fr`Attendez que le fichier soit copié ; vérifiez son nom, par exemple file: scan.stl`,
		),
	'shape-failed': (d) =>
		say(
			fr`${name(d.scan)} n’a pas pu être préparé (${d.reason}).`,
			d.scan === null
				? fr`Comparez les nombres avec ceux d’un autre spécimen, et remettez les derniers qui allaient.`
				: fr`Enregistrez de nouveau le scan dans le programme qui l’a fait ; s’il a plus de ${num(2)} millions de triangles, enregistrez-le avec moins.`,
		),
	'shape-unmeasured': (d) =>
		say(fr`${name(d.scan)} n’a pas pu être mesuré : ${NO_MEASURE[d.code]}`, ADVICE[d.advice]),
	'scan-unreadable': (d) => {
		const [found, advice] = FAULTS[d.code];
		return say(fr`${name(d.scan)} n’a pas pu être lu : ${found}`, advice);
	},
};
