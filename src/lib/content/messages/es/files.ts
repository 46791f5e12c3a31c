import type { FILES as EN } from '../en/files';
import type { Holds } from '../codes';
import { say, short } from '../parts';
import { count, didYouMean, list, num, tongue } from './voice';

const KIND = { bed: 'de la capa', group: 'del grupo', specimen: 'del espécimen' } as const;
const THE = { bed: 'La capa', group: 'El grupo', specimen: 'El espécimen' } as const;

/** What a missing file holds, in words. */
const holds = (what: Holds): string =>
	typeof what === 'object'
		? `los datos ${KIND[what.of]} ${what.id}, que por eso no aparece en la exposición`
		: {
				exhibit: 'el nombre del museo, los idiomas, las salas y la pantalla',
				sources: 'las obras publicadas de las que salen los números y las afirmaciones',
				'screen-words': 'las palabras de botones y pantallas en el primer idioma',
			}[what];

/** Files and folders: what is missing, misnamed, unreadable or not translated. */
export const FILES: typeof EN = {
	'folder-unreadable': (d) =>
		say(
			`No se pudo ver qué hay en la carpeta de contenido (${short(d.reason)}).`,
			'Comprueba que la carpeta existe y que este ordenador puede leerla.',
		),
	'missing-file': (d) =>
		say(
			`Falta ${d.file}. Contiene ${holds(d.holds)}.`,
			`Crea el archivo ${d.file}; para empezar, copia el de la exposición de muestra.`,
		),
	'unreadable-file': (d) =>
		say(
			`No se pudo leer el archivo (${short(d.reason)}).`,
			'Ciérralo en otros programas y comprueba que este ordenador puede leerlo.',
		),
	'file-too-large': (d) =>
		say(
			`El archivo tiene ${num(d.size_kB)} kB; un archivo de texto puede tener aquí ${num(d.most_kB)} kB como mucho.`,
			'Comprueba que es el archivo correcto: las palabras de un espécimen ocupan unos pocos kB.',
		),
	'empty-file': (d) => say('El archivo está vacío.', `Rellénalo o bórralo. Empieza así: ${d.example}`),
	'not-utf8': () =>
		say(
			'El archivo no está guardado en UTF-8, así que no se pueden leer letras como é o ñ.',
			'Guárdalo otra vez con la codificación UTF-8 (en el Bloc de notas: Guardar como, Codificación: UTF-8).',
		),
	'not-text': () =>
		say(
			'El archivo contiene signos que no son texto.',
			'Ábrelo en un editor de texto y guárdalo como texto sin formato con la codificación UTF-8.',
		),
	'not-understood': (d) =>
		say(
			`No se pudo entender el archivo (${short(d.reason)}).`,
			'Compáralo con el mismo tipo de archivo de otro espécimen, o empieza de nuevo con una copia.',
		),
	'too-many-problems': (d) =>
		say(
			`En este archivo hay ${count(d.left, 'problema', 'problemas')} más.`,
			'Corrige primero los de arriba; casi todos los demás desaparecerán también.',
		),
	'unknown-file': (d) =>
		say(
			`La exposición no usa este archivo.${didYouMean(d.meant)}`,
			d.meant
				? `Cámbiale el nombre a ${d.meant}, o sácalo de la carpeta de contenido.`
				: 'Sácalo de la carpeta de contenido, o comprueba su nombre y su carpeta.',
		),
	'wrong-ending': (d) =>
		say(`El nombre acaba en ${d.found}, así que el archivo no se usa.`, `Cámbiale el nombre a ${d.name}`),
	'bad-name': (d) =>
		say(
			`«${short(d.found)}» no sirve aquí de nombre: los nombres solo tienen minúsculas de la a a la z, cifras y guiones sueltos.`,
			`Cámbiale el nombre, por ejemplo a ${d.meant}`,
		),
	'bad-id': (d) =>
		say(
			`«${short(d.found)}» no sirve de identificador: los identificadores solo tienen minúsculas de la a a la z, cifras y guiones sueltos.`,
			`Escríbelo así: ${d.meant}`,
		),
	'no-language-code': (d) =>
		say('El nombre no dice de qué idioma se trata.', `Pon el idioma antes de la terminación: ${d.name}`),
	'wrong-language-code': (d) =>
		say(
			`«${d.found}» no es un idioma de esta exposición. En exhibit.yaml están ${list(d.codes, 'and')}.`,
			d.meant
				? `Cambia el nombre del archivo a ${d.name}`
				: `Cambia el nombre del archivo, por ejemplo a ${d.name}`,
		),
	'language-not-shown': (d) =>
		say(
			`Este archivo está en «${d.found}», un idioma que la exposición no muestra. En exhibit.yaml están ${list(d.codes, 'and')}.`,
			`Para mostrarlo, añade una línea bajo languages en exhibit.yaml: - { code: ${d.found}, name: (su propio nombre) }`,
		),
	'missing-text': (d) =>
		say(
			`${THE[d.of]} ${d.id} no tiene un texto utilizable en el primer idioma (${tongue(d.language)}), así que no aparece en la exposición.`,
			`Escribe ${d.file}; para empezar, copia el mismo archivo de otro.`,
		),
	'missing-translation': (d) =>
		say(
			`Aquí no hay un texto utilizable en ${tongue(d.language)}; quien lee en ese idioma ve en su lugar ${d.part === 'text' ? 'el texto' : 'las palabras'} en ${tongue(d.first)}.`,
			`Copia ${d.file} con este nombre y tradúcelo.`,
		),
};
