import type { QUIZ as EN } from '../en/quiz';
import { say } from '../parts';

/** The folder `quiz/`. */
export const QUIZ: typeof EN = {
	'right-not-shown': (d) =>
		say(
			`La respuesta correcta es ${d.right}, pero no es ninguno de los tres especímenes (${d.specimens.join(', ')}).`,
			`Escribe uno de ellos, por ejemplo right: ${d.specimens[0] ?? 'skm-0104'}`,
		),
	'same-specimen-twice': (d) =>
		say(`${d.found} está dos veces entre los tres especímenes.`, 'Nombra tres distintos.'),
	'quiz-specimen-unknown': (d) =>
		say(
			`No hay ningún espécimen ${d.found}, así que esta pregunta no se hace.`,
			d.meant ? `¿Querías escribir ${d.meant}?` : 'Escribe el nombre de una carpeta de specimens/.',
		),
	'why-missing': (d) =>
		say(
			`Nada dice por qué «${d.option}» es correcto o no. Cada respuesta tiene que enseñar algo.`,
			`Añádelo en ${d.file || 'este archivo'} bajo why: ${d.option}: One sentence.`,
		),
	'quiz-words-missing': (d) =>
		say(
			`No hay palabras utilizables para «${d.found}» en ${d.file}, así que no se muestra.`,
			`Añádelas a ${d.file} bajo ${d.table}: ${d.found}:`,
		),
};
