import type { WORDS as EN } from '../en/words';
import type { MessageFault } from '../codes';
import { exampleFor } from '../examples';
import { say, short } from '../parts';
import { count, didYouMean, num, tongue } from './voice';

const MESSAGE_FAULTS: Readonly<Record<MessageFault, string>> = {
	'brace-open': 'falta una } de cierre',
	'apostrophe-open': 'se abre un apóstrofo y no se cierra',
	'brace-empty': 'no hay nada entre { y }',
	'bad-filler': 'el nombre entre { y } es una sola palabra de letras, cifras y _',
	'no-type': 'falta number, plural o select después de la coma',
	'bad-type': 'después de la coma solo puede ir number, plural o select',
	'no-other': 'falta la opción other {…}',
	'bad-choices': 'las opciones se escriben {count, plural, one {# tooth} other {# teeth}}',
	tag: 'aquí no puede ir un < con una letra detrás',
};

/** Words for visitors. */
export const WORDS: typeof EN = {
	'alt-missing': () =>
		say(
			'Falta alt: dice lo que muestra la imagen a quien no puede verla. En su lugar se lee la línea corta.',
			`Añade una línea como ${exampleFor('alt')}`,
		),
	'alt-repeats-title': () =>
		say(
			'alt dice lo mismo que el título; debe decir lo que se puede ver.',
			`Describe la forma y el color, por ejemplo ${exampleFor('alt')}`,
		),
	'long-sentence': (d) =>
		say(
			`Esta frase tiene ${count(d.words, 'palabra', 'palabras')}; ${num(d.most)} es lo máximo que el público lee con facilidad: ${d.begins}`,
			'Haz dos frases de ella.',
		),
	'long-label': (d) =>
		say(
			`El texto tiene ${count(d.words, 'palabra', 'palabras')}; ${num(d.most)} es lo máximo que el público lee de pie.`,
			'Deja fuera lo que ya muestra el propio diente.',
		),
	'hard-to-read': (d) =>
		say(
			`El texto es difícil de leer: su facilidad de lectura es ${num(d.ease)}, en una escala de 0 (muy difícil) a 100 (muy fácil); aquí hace falta ${num(d.least)} o más.`,
			'Haz frases cortas de las largas y pon palabras de todos los días en lugar de las largas. Luego léelo en voz alta.',
		),
	'too-certain': (d) =>
		say(
			`«${d.word}» no deja dudas; de un diente antiguo se saben pocas cosas con tanta seguridad.`,
			`Si otras personas pueden verlo de otro modo, escribe ${{ fr: '«laisse penser» o «peut-être»', es: '«sugiere» o «quizá»' }[d.language] ?? '«suggests» o «may»'}. Si no, déjalo como está.`,
		),
	'number-without-source': (d) =>
		say(
			`El texto dice «${short(d.found)}», pero ${d.file} no nombra ninguna fuente para ello.`,
			`Nombra quién lo dice, por ejemplo ${exampleFor('sources')}, o quita el número.`,
		),
	'picture-left-out': () =>
		say(
			'Las imágenes del texto no se muestran: la imagen es el propio diente.',
			'Borra la parte que se parece a ![palabras](dirección)',
		),
	'code-shown-as-text': (d) =>
		say(
			`${short(d.found, 30)} se mostraría letra por letra; aquí solo se entiende Markdown.`,
			'Usa *asteriscos* para la cursiva y **dos asteriscos** para la negrita.',
		),
	'text-not-shown': () =>
		say(
			'El texto debajo de las líneas cortas no se muestra en este tipo de archivo.',
			'Lleva lo importante a la línea short: y borra el resto.',
		),
	'bad-message': (d) =>
		say(
			`Este texto no se puede completar: ${MESSAGE_FAULTS[d.why]}.`,
			`Escribe cada hueco entre sus propias llaves, por ejemplo "{count} teeth". Se encontró: ${short(d.found, 80)}`,
		),
	'placeholder-mismatch': (d) =>
		say(
			`Los huecos entre llaves no son los del texto en ${tongue(d.language)}: ${[
				...(d.missing.length
					? [`${d.missing.length === 1 ? 'falta' : 'faltan'} ${d.missing.join(', ')}`]
					: []),
				...(d.extra.length
					? [`${d.extra.length === 1 ? 'no está allí' : 'no están allí'} ${d.extra.join(', ')}`]
					: []),
			].join('; ')}. En su lugar se muestra el texto en ${tongue(d.language)}.`,
			d.missing.length
				? `Deja ${d.missing.join(' y ')} exactamente como en el texto en ${tongue(d.language)}.`
				: `Quita ${d.extra.join(' y ')}.`,
		),
	'text-not-translated': (d) =>
		say(
			`«${d.key}» no está traducido; el público ve el texto en ${tongue(d.language)}.`,
			`Añade una línea ${d.key}: con la traducción de «${short(d.shown)}»`,
		),
	'text-not-used': (d) =>
		say(
			`«${short(d.key)}» no está en ${d.file}, así que no se muestra.${didYouMean(d.meant)}`,
			d.meant
				? `Escribe ${d.meant} en lugar de ${short(d.key)}.`
				: `Borra la línea, o añádela primero a ${d.file}.`,
		),
};
