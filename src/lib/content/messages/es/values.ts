import type { VALUES as EN } from '../en/values';
import { exampleAt, exampleFor } from '../examples';
import { atLeast, atMost, lastKey, roundedDown, roundedUp, say, short } from '../parts';
import { list, MARKS, nameOf, num, shown } from './voice';

/** The values behind the names. */
export const VALUES: typeof EN = {
	'empty-value': (d) =>
		say(`No hay ningún valor para ${nameOf(d.path)}.`, `Escribe uno, por ejemplo ${exampleAt(d.path)}`),
	'decimal-comma': (d) =>
		say(
			`«${shown(d.found)}» tiene coma decimal; aquí los números llevan punto decimal.`,
			`Escribe ${lastKey(d.path)}: ${d.meant}`,
		),
	'number-with-unit': (d) =>
		say(
			`«${short(shown(d.found))}» lleva una unidad; el valor es solo un número${d.unit ? `, y ${d.unit} ya está en su nombre` : ''}.`,
			d.meant ? `Escribe ${lastKey(d.path)}: ${d.meant}` : `Escribe ${exampleAt(d.path)}`,
		),
	'number-in-quotes': (d) =>
		say(
			`«${shown(d.found)}» está entre comillas, y eso lo hace un texto; aquí va un número.`,
			`Escribe ${lastKey(d.path)}: ${shown(d.found).trim()}`,
		),
	'not-a-number': (d) =>
		say(`Aquí va un número, pero se encontró «${short(shown(d.found))}».`, `Escribe ${exampleAt(d.path)}`),
	'not-whole': (d) =>
		say(
			`Aquí va un número entero, pero se encontró ${shown(d.found)}.`,
			`Escribe ${lastKey(d.path)}: ${d.meant}`,
		),
	'out-of-range': (d) => {
		const name = lastKey(d.path);
		const least = d.min === undefined ? '' : atLeast(d.min);
		const most = d.max === undefined ? '' : atMost(d.max);
		const low = d.min === undefined ? '' : num(roundedUp(d.min));
		const high = d.max === undefined ? '' : num(roundedDown(d.max));
		const range = low && high ? `de ${low} a ${high}` : high ? `${high} como mucho` : `${low} como poco`;
		const near = least && (Number(d.found) < Number(least) || !most) ? least : most;
		const found = Number.isFinite(Number(d.found)) ? num(Number(d.found)) : shown(d.found);
		return say(
			`${name} es ${found}; puede ser ${range}.`,
			`Comprueba el número y su unidad; lo más cercano posible es ${name}: ${near}`,
		);
	},
	'not-a-point': (d) =>
		say(
			`${lastKey(d.path)} se escribe con tres números entre corchetes, pero se encontró ${short(shown(d.found))}.`,
			`Escribe ${exampleAt(d.path)}, con puntos decimales`,
		),
	'marks-coincide': (d) =>
		say(
			`Dos marcas de la corona están en el mismo lugar: ${MARKS[d.first]} y ${MARKS[d.second]}.`,
			'Marca cada una en su lugar: el ápice es la punta; los puntos de la base son la parte delantera y la trasera de la base de la corona.',
		),
	'no-direction': () =>
		say(
			'labial es una dirección, y tres ceros no señalan a ninguna parte.',
			`Escribe hacia dónde mira el lado del labio en el escaneo, por ejemplo ${exampleFor('labial')}, o borra la línea.`,
		),
	'not-yes-no': (d) =>
		say(
			`Aquí va true o false, pero se encontró «${short(shown(d.found))}».`,
			d.meant === undefined ? `Escribe ${exampleAt(d.path)}` : `Escribe ${lastKey(d.path)}: ${d.meant}`,
		),
	'text-needs-quotes': (d) =>
		say(
			`Aquí va un texto, pero ${short(shown(d.found))} se toma por un número o por true o false.`,
			`Ponlo entre comillas: ${lastKey(d.path)}: "${short(shown(d.found))}"`,
		),
	'not-one-text': (d) =>
		say(
			`Para ${nameOf(d.path)} va un solo texto, pero se encontraron varios valores.`,
			`Escribe ${exampleAt(d.path)}`,
		),
	'not-a-list': (d) =>
		say(
			`Para ${nameOf(d.path)} va una lista, pero se encontró un solo valor.`,
			`Ponlo entre corchetes, por ejemplo ${exampleAt(d.path)}`,
		),
	'list-empty': (d) =>
		say(
			`La lista ${nameOf(d.path)} está vacía; necesita al menos un elemento.`,
			`Escribe ${exampleAt(d.path)}`,
		),
	'not-fields': (d) =>
		say(`Para ${nameOf(d.path)} van líneas de la forma «nombre: valor».`, `Escríbelas así: ${d.example}`),
	'wrong-choice': (d) =>
		say(
			`«${short(shown(d.found))}» no es posible para ${lastKey(d.path)}: puede ser ${list(d.choices)}.`,
			d.meant ? `¿Querías escribir ${lastKey(d.path)}: ${d.meant}?` : `Escribe ${exampleAt(d.path)}`,
		),
	'not-a-side': (d) =>
		say(
			`«${short(shown(d.found))}» no es un lado de un diente: es mesial, distal, labial o lingual, o grados (0 distal, 90 labial, 180 mesial, 270 lingual).`,
			`Escribe where: ${d.meant ?? 'distal'}`,
		),
	'unknown-room': (d) =>
		say(
			`No hay ninguna sala «${short(d.found)}». Las salas son ${list(d.choices, 'and')}.`,
			d.meant
				? `¿Querías escribir ${d.meant}?`
				: 'Bórrala, o escribe una de estas, por ejemplo rooms: [compare]',
		),
	'bad-code': (d) =>
		say(
			`«${short(d.found)}» no es un código de idioma: son dos minúsculas (tres si el idioma no tiene uno de dos).`,
			`Escribe code: ${d.meant ?? 'en'}`,
		),
	'bad-licence': (d) =>
		say(
			`«${short(d.found, 90)}» no es la dirección de una licencia Creative Commons ni de una declaración de RightsStatements.org.`,
			d.meant
				? `Escribe licence: ${d.meant}`
				: `Escribe la dirección http hasta su última barra: ${exampleFor('licence')}`,
		),
	'bad-address': (d) =>
		say(
			{
				unreadable: `«${short(d.found)}» no es una dirección web.`,
				'not-https': `«${short(d.found)}» no empieza por https://, así que los teléfonos avisarían en contra de ella.`,
				name: `«${short(d.found)}» contiene un nombre de usuario o una contraseña, que todo el mundo podría leer en la pantalla.`,
				more: `«${short(d.found)}» sigue después de un ? o un #; la pantalla añade ella misma ese final.`,
			}[d.why],
			`Escribe la dirección de la página de inicio, por ejemplo ${exampleFor('public_address')}`,
		),
	'bad-doi': (d) =>
		say(
			`«${short(d.found)}» no es un DOI; un DOI empieza por 10.`,
			`Escribe ${d.meant ? `doi: ${d.meant}` : exampleFor('doi')}`,
		),
	'ages-swapped': (d) =>
		say(
			`La edad más reciente (${num(d.youngest)}) es más antigua que la más antigua (${num(d.oldest)}); las edades van en millones de años.`,
			`Cámbialas de sitio: oldest_ma: ${d.youngest} y youngest_ma: ${d.oldest}`,
		),
	'idle-too-short': (d) =>
		say(
			`Tras ${num(d.found)} segundos sin que nadie la toque, la pantalla pregunta si hay alguien; quien lee despacio aún está leyendo.`,
			`Escribe warn_after_s: ${d.least} o más.`,
		),
	'warning-too-short': (d) =>
		say(
			`El público tiene ${num(d.found)} segundos para decir que sigue ahí; algunas personas necesitan al menos 20.`,
			'Escribe reset_after_warning_s: 20 o más.',
		),
};
