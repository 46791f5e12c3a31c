import type { UNREADABLE as EN } from '../en/unreadable';
import type { MeasureAdvice, MeasureFaultCode, ScanFaultCode } from '../codes';
import { say } from '../parts';
import { num } from './voice';

const name = (scan: string | null) => (scan === null ? 'el modelo' : `el escaneo ${scan}`);

const ADVICE: Readonly<Record<MeasureAdvice, string>> = {
	mark: 'Marca la punta y la base de su corona en el escritorio. Comprueba que el archivo contiene un solo diente y que su unidad es la correcta.',
	'check-marks':
		'Comprueba las marcas bajo crown: van en milímetros, en los ejes del escaneo. Comprueba también su unidad.',
	'check-file':
		'Comprueba que el archivo contiene un solo diente con su corona, y nada más, y que su unidad es la correcta: units: mm',
};

const NO_MEASURE: Readonly<Record<MeasureFaultCode, string>> = {
	empty: 'no tiene triángulos.',
	'not-a-number': 'uno de sus puntos no tiene lugar.',
	'bad-index': 'uno de sus triángulos usa un punto que no existe.',
	'no-area': 'su superficie no tiene extensión.',
	'no-base': 'no se encontró la base de la corona.',
	'no-height': 'la punta no está por encima de la base.',
};

const AGAIN = 'Cópialo otra vez desde donde se hizo, o guárdalo otra vez en el programa que lo hizo.';
const REPAIR = 'Repara la superficie en el programa que hizo el escaneo, y guárdala otra vez.';

/** What was found, then what to do. */
const FAULTS: Readonly<Record<ScanFaultCode, readonly [string, string]>> = {
	empty: ['está vacío.', 'Cópialo otra vez desde donde se hizo.'],
	truncated: ['acaba antes de tiempo; falta una parte.', AGAIN],
	'not-a-mesh': [
		'no es lo que dice su nombre.',
		'Comprueba que es el propio escaneo, guardado como GLB, STL, PLY u OBJ.',
	],
	'unknown-format': [
		'este tipo de archivo no se puede leer.',
		'Guarda el escaneo como GLB, STL, PLY u OBJ, y deja la terminación que le da el programa.',
	],
	'unit-missing': [
		'nada dice en qué unidad están sus números.',
		'Di en qué unidad están sus números, por ejemplo units: mm; pregunta a quien hizo el escaneo.',
	],
	'count-lies': ['anuncia un número de elementos que no es el verdadero.', AGAIN],
	damaged: ['está dañado.', AGAIN],
	'not-a-number': ['uno de sus puntos tiene un valor que no es un número posible.', REPAIR],
	'index-out-of-range': ['uno de sus triángulos usa un punto que no existe.', REPAIR],
	'no-triangles': [
		'no tiene triángulos, así que tampoco superficie.',
		'Haz de él una superficie (una malla) en el programa que hizo el escaneo, y guárdala.',
	],
	'no-area': [
		'sus triángulos no tienen extensión.',
		'Comprueba los ajustes de exportación del programa que hizo el escaneo, y guárdalo otra vez.',
	],
	'loose-triangles': [
		'sus triángulos no están unidos entre sí.',
		'Une (suelda) la superficie en el programa que hizo el escaneo, y guárdala otra vez.',
	],
	'too-large': [
		'es más grande de lo que se puede leer.',
		'Guarda el escaneo con menos triángulos: medio millón muestra cada detalle de un diente.',
	],
	'compressed-unreadable': [
		'está comprimido de un modo que no se puede leer.',
		'Guárdalo otra vez sin compresión, o como STL.',
	],
	'feature-unknown': [
		'usa una extensión desconocida.',
		'Guárdalo otra vez como GLB sencillo sin extensiones, o como STL.',
	],
	'nested-too-deep': [
		'sus partes están metidas unas en otras a demasiados niveles.',
		'Guárdalo otra vez como una sola malla sencilla, por ejemplo como STL.',
	],
	'external-file-missing': [
		'necesita otro archivo, que no está.',
		'Copia ese archivo en la misma carpeta, o guarda el escaneo como GLB, que lo contiene todo.',
	],
};

/** Shapes that could not be read, measured or prepared. */
export const UNREADABLE: typeof EN = {
	'scan-not-there': (d) =>
		say(
			`No está ${name(d.scan)}, o está cambiando en este momento.`,
			'Espera a que el archivo se haya copiado; comprueba su nombre, por ejemplo file: scan.stl',
		),
	'shape-failed': (d) =>
		say(
			`No se pudo preparar ${name(d.scan)} (${d.reason}).`,
			d.scan === null
				? 'Compara los números con los de otro espécimen, y vuelve a los últimos que funcionaban.'
				: `Guarda otra vez el escaneo en el programa que lo hizo; si tiene más de ${num(2)} millones de triángulos, guárdalo con menos.`,
		),
	'shape-unmeasured': (d) => say(`No se pudo medir ${name(d.scan)}: ${NO_MEASURE[d.code]}`, ADVICE[d.advice]),
	'scan-unreadable': (d) => {
		const [found, advice] = FAULTS[d.code];
		return say(`No se pudo leer ${name(d.scan)}: ${found}`, advice);
	},
};
