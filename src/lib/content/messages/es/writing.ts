import type { WRITING as EN } from '../en/writing';
import { quoted, say, short } from '../parts';
import { num } from './voice';

/** How a file is written: YAML, and the lines of hyphens round the short lines of a text. */
export const WRITING: typeof EN = {
	'tab-indent': () =>
		say(
			'Esta línea empieza con un tabulador. Aquí las líneas se sangran con espacios.',
			'Pon dos espacios en lugar de cada tabulador.',
		),
	'odd-space': () =>
		say(
			'Esta línea tiene un espacio de no separación: parece un espacio, pero no lo es para el programa que lee el archivo.',
			'Borra ese espacio y escríbelo de nuevo; un texto copiado de una página web o de un procesador de textos trae espacios así.',
		),
	'bad-indent': () =>
		say(
			'Esta línea, o la de encima, no empieza en la misma columna que las líneas con las que va.',
			'Da el mismo número de espacios a las líneas de un mismo nivel, y dos más en cada nivel inferior.',
		),
	'unclosed-quote': (d) =>
		say(
			`Aquí se abren comillas con ${d.quote} y no se cierran.`,
			`Pon ${d.quote} al final del texto, por ejemplo title: ${d.quote}Sea lizard${d.quote}`,
		),
	'text-after-quote': (d) =>
		say(
			`Hay algo después de las comillas de cierre: ${short(d.line)}`,
			`Pon todo el texto en el otro tipo de comillas, por ejemplo title: '"Sea" lizard' o title: "The lizard's tooth"`,
		),
	'missing-colon': (d) =>
		say(
			`Faltan los dos puntos en «${short(d.line)}»: cada línea tiene un nombre, dos puntos, un espacio y un valor.`,
			`Escríbela así: ${d.meant ?? 'title: Sea lizard'}`,
		),
	'missing-space': (d) =>
		say(`Falta un espacio después de los dos puntos en «${short(d.found)}».`, `Escribe ${short(d.meant)}`),
	'colon-in-text': (d) =>
		say(
			'Este texto tiene dos puntos seguidos de un espacio, y eso empezaría un valor nuevo.',
			`Pon el texto entre comillas: ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'special-sign': (d) =>
		say(
			`Un texto no puede empezar aquí con ${d.sign}, porque ese signo tiene un significado propio.`,
			`Pon el texto entre comillas, por ejemplo ${short(d.line, 80)}`,
		),
	'unclosed-bracket': (d) =>
		say(
			`Aquí se abre ${d.open}, y su ${d.close} falta o viene después de una línea sin sangrar.`,
			d.open === '['
				? 'Ciérralo en la misma línea: rooms: [compare]'
				: 'Ciérralo en la misma línea: { at: 0, shape: oval }',
		),
	'extra-bracket': () =>
		say(
			'Sobra un paréntesis de cierre, o hay uno que nada abrió.',
			'Cuéntalos: cada [ necesita un ] y cada { necesita un }.',
		),
	'missing-comma': () =>
		say('Entre { y } falta una coma.', 'Pon una coma después de cada valor: { at: 0, shape: oval }'),
	'bad-backslash': () =>
		say(
			'Una \\ entre comillas dobles tiene un significado propio.',
			`Usa comillas simples para este texto: 'one \\ sign', o escribe \\\\ para una sola \\`,
		),
	'second-part': () =>
		say(
			'Una línea de tres guiones empieza aquí una segunda parte; solo se usa la primera.',
			'Borra la línea de guiones.',
		),
	'list-on-line': () =>
		say(
			'Una lista no puede empezar con un guion en la misma línea que su nombre.',
			'Escribe la lista entre corchetes, por ejemplo sources: [leidy-1865]',
		),
	'reference-sign': (d) =>
		say(
			`Un valor empieza con ${d.sign}, que señalaría otro lugar del archivo; eso aquí no se usa.`,
			`Si ${d.sign} es parte del texto, pon el texto entre comillas: title: "${d.sign}Sea lizard"`,
		),
	'duplicate-key': (d) =>
		say(
			`«${short(d.key)}» está aquí por segunda vez; ya está en la línea ${num(d.firstLine)}.`,
			'Deja uno de los dos y borra el otro.',
		),
	'line-not-understood': (d) =>
		say(
			`No se pudo entender esta línea: ${short(d.line)}`,
			'Cada línea tiene un nombre, dos puntos, un espacio y un valor. Un texto con signos especiales va entre comillas: title: "Sea lizard"',
		),
	'hash-cuts-text': (d) =>
		say(
			`Todo lo que sigue al signo # se toma por una nota y no se muestra: ${short(d.text)}`,
			`Si es parte del texto, pon el texto entre comillas: ${d.key}: ${quoted(short(d.text, 80))}`,
		),
	'too-deep': () =>
		say(
			'Aquí los valores están metidos unos en otros a demasiados niveles.',
			'Compara el archivo con el mismo tipo de archivo de otro espécimen.',
		),
	'no-top-lines': (d) =>
		say(
			'El archivo no empieza con una línea de tres guiones (---).',
			`Empieza el archivo con ---, luego las líneas cortas (${d.example}), luego otra vez ---, luego el texto.`,
		),
	'top-lines-not-closed': () =>
		say(
			'Falta la segunda línea de tres guiones (---).',
			'Pon --- en una línea aparte entre las líneas cortas y el texto.',
		),
};
