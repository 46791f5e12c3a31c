import type { ANIMALS as EN } from '../en/animals';
import type { DrawingFault } from '../codes';
import { exampleFor } from '../examples';
import { number, say } from '../parts';
import { count, num } from './voice';

const FAULTS: Readonly<Record<Exclude<DrawingFault, 'part'>, string>> = {
	script: 'un script',
	style: 'un estilo',
	link: 'un enlace',
	picture: 'una imagen',
	lettering: 'letras',
	rectangle: 'un rectángulo',
	circle: 'un círculo',
	ellipse: 'una elipse',
	line: 'una línea',
	polygon: 'un polígono',
	transform: 'una transformación',
};

/** The animal behind a tooth: its outline (`groups/<id>.svg`), its length, its short lines. */
export const ANIMALS: typeof EN = {
	'drawing-not-svg': () =>
		say(
			'El dibujo no es un archivo SVG, o una parte de él no está cerrada.',
			'Guarda otra vez el contorno como «SVG sencillo» en tu programa de dibujo.',
		),
	'drawing-forbidden': (d) =>
		say(
			`El dibujo contiene ${d.what === 'part' ? `una parte del tipo «${d.name ?? ''}»` : FAULTS[d.what]}; aquí solo se usan contornos (trazados).`,
			'Convierte todo en trazados en tu programa de dibujo, sin efectos, y guárdalo como «SVG sencillo».',
		),
	'drawing-viewbox': () =>
		say(
			'El dibujo no dice cómo de grande es su hoja: falta viewBox, o no son cuatro números.',
			'Escribe viewBox="0 0 1000 200": izquierda, arriba, anchura, altura. La anchura es la longitud del animal, del hocico a la punta de la cola.',
		),
	'drawing-no-path': () =>
		say(
			'El dibujo no contiene ningún contorno.',
			'Dibuja el contorno como un trazado, o saca el archivo de groups/ y no se mostrará ninguno.',
		),
	'drawing-bad-path': (d) =>
		say(
			`Los datos del trazado ${num(d.path)} no se pueden leer en «${d.found.replace(/"/g, "'")}».`,
			'Guarda otra vez el contorno como «SVG sencillo»; un trazado se escribe con letras y números, por ejemplo M0 0L10 5Z',
		),
	'drawing-too-detailed': (d) =>
		say(
			`El contorno tiene ${count(d.characters, 'signo', 'signos')} de trazado; ${num(d.most)} es lo máximo.`,
			'Simplifica el trazado en tu programa de dibujo: de 30 a 100 puntos bastan de sobra.',
		),
	'length-empty': () =>
		say(
			'length_m no da ni una longitud habitual ni una máxima.',
			`Escribe al menos una de las dos: ${exampleFor('length_m')}`,
		),
	'lengths-swapped': (d) =>
		say(
			`La longitud habitual (${num(d.typical)} m) es mayor que la máxima (${num(d.largest)} m).`,
			`Cámbialas de sitio: typical: ${number(d.largest)} y largest: ${number(d.typical)}`,
		),
	'long-line': (d) =>
		say(
			`${d.key} tiene ${count(d.words, 'palabra', 'palabras')}; ${num(d.most)} es lo máximo para una línea que se lee de un vistazo.`,
			'Deja solo lo más importante.',
		),
};
