import type { Mark, Measure, Unit } from '../codes';
import { languageName, listsIn, numbersIn, type Shown, type Tongue } from '../parts';

/** Words that many Spanish messages share. */

export const num = numbersIn('es');
export const list = listsIn('es');
/** `1 palabra`, `2 palabras`. */
export const count = (n: number, one: string, many: string) => `${num(n)} ${n === 1 ? one : many}`;

export const nameOf = (path: string) => path || 'este archivo';

export const shown = (found: Shown): string =>
	typeof found === 'string' ? found : { list: 'una lista', fields: 'varios valores' }[found.several];

/** `inglés` */
export const tongue = (one: Tongue) => languageName(one, 'es');

export const didYouMean = (meant: string | undefined) => (meant ? ` ¿Querías escribir ${meant}?` : '');

export const UNIT_NAMES: Readonly<Record<Unit, string>> = {
	um: 'micrómetros',
	mm: 'milímetros',
	cm: 'centímetros',
	m: 'metros',
	in: 'pulgadas',
};

export const MARKS: Readonly<Record<Mark, string>> = {
	apex: 'punta (ápice)',
	baseMesial: 'base mesial',
	baseDistal: 'base distal',
};

export const MEASURES: Readonly<Record<Measure, string>> = {
	mm: 'las longitudes van en milímetros',
	m: 'las longitudes de los animales van en metros',
	deg: 'los ángulos van en grados',
	s: 'los tiempos van en segundos',
	in: 'la diagonal va en pulgadas',
	d: 'los tiempos de los dientes van en días',
	um: 'las anchuras de las líneas van en micrómetros',
	mm3: 'los volúmenes de los dientes van en milímetros cúbicos',
	px: 'la pantalla va en píxeles',
	mpa: 'las presiones van en megapascales',
	gpa: 'la rigidez va en gigapascales',
	kg: 'las masas van en kilogramos',
	ma: 'las edades van en millones de años',
	serrations: 'los dentículos se cuentan en 5 mm del filo',
};
