import type { REFERENCES as EN } from '../en/references';
import { say, short } from '../parts';
import { didYouMean, num, tongue } from './voice';

/** One file and another. */
export const REFERENCES: typeof EN = {
	'unknown-group': (d) =>
		say(
			`No hay ningún grupo «${short(d.found)}»: groups/${short(d.found)}.yaml no existe.${didYouMean(d.meant)}`,
			d.meant
				? `Escribe group: ${d.meant}`
				: 'Escribe el nombre de un archivo de groups/, o crea ese archivo.',
		),
	'group-left-out': (d) =>
		say(
			`El grupo «${d.found}» tiene sus propios problemas y no se muestra, así que este espécimen tampoco.`,
			`Corrige los problemas que se indican para groups/${d.found}.`,
		),
	'unknown-bed': (d) =>
		say(
			`No hay ninguna capa «${short(d.found)}»: beds/${short(d.found)}.yaml no existe.${didYouMean(d.meant)}`,
			d.meant ? `Escribe bed: ${d.meant}` : 'Escribe el nombre de un archivo de beds/, o crea ese archivo.',
		),
	'bed-left-out': (d) =>
		say(
			`La capa «${d.found}» tiene sus propios problemas y no se muestra, así que este espécimen tampoco.`,
			`Corrige los problemas que se indican para beds/${d.found}.`,
		),
	'unknown-source': (d) =>
		say(
			`No hay ninguna fuente «${short(d.found)}» en sources.yaml.${didYouMean(d.meant)}`,
			d.meant ? `Escribe ${d.meant}` : 'Añádela a sources.yaml, o escribe un identificador que esté allí.',
		),
	'source-left-out': (d) =>
		say(
			`No se puede mostrar la fuente «${short(d.found)}», porque sources.yaml tiene sus propios problemas.`,
			'Corrige los problemas que se indican para sources.yaml.',
		),
	'duplicate-accession': (d) =>
		say(
			`El número de inventario ${d.found} ya es de ${d.file}, así que este espécimen no se muestra.`,
			'Da a uno de los dos su propio número, por ejemplo accession: SKM 0105',
		),
	'duplicate-id': (d) =>
		say(
			`«${d.found}» está aquí por segunda vez; ya está en la línea ${num(d.firstLine)}.`,
			`Da a cada uno el suyo, por ejemplo ${d.found}-2, o borra uno de los dos.`,
		),
	'bed-for-living': (d) =>
		say(`${d.group} vive hoy, así que sus dientes no tienen capa.`, 'Borra la línea que empieza por bed:'),
	'bed-missing': (d) =>
		say(
			`${d.group} se extinguió, pero no se da ninguna capa; la pantalla no dirá qué edad tiene este espécimen.`,
			'Añade una línea como bed: upper-marl',
		),
	'missing-scan': (d) =>
		say(
			`El escaneo ${short(d.found)} no está en ${d.folder}.${didYouMean(d.meant)}`,
			d.meant ? `Escribe file: ${d.meant}` : `Pon el escaneo en ${d.folder}, o corrige su nombre.`,
		),
	'scan-ending': (d) =>
		say(
			`«${short(d.found)}» no es un tipo de escaneo que se pueda leer: su nombre debe acabar en .glb, .stl, .ply u .obj.`,
			`Guarda el escaneo como uno de estos, por ejemplo file: ${d.example}`,
		),
	'scan-not-in-folder': (d) =>
		say(
			`«${short(d.found)}» no es un simple nombre de archivo; el escaneo está junto a specimen.yaml.`,
			`Copia el escaneo en la carpeta del espécimen y escribe file: ${d.name}`,
		),
	'empty-scan': (d) =>
		say(`El escaneo ${d.found} no tiene ni un byte.`, 'Cópialo otra vez desde donde se hizo.'),
	'shape-missing': () =>
		say(
			'La forma no es un modelo ni un escaneo; hace falta uno de los dos.',
			'Añade bajo shape: o bien model: con sus números, o bien scan: { file: scan.stl, units: mm }',
		),
	'shape-both': () =>
		say(
			'La forma tiene a la vez un modelo y un escaneo; solo se puede mostrar uno.',
			'Borra uno de los dos, o pon un # delante de cada una de sus líneas.',
		),
	'feature-without-name': (d) =>
		say(
			`El lugar «${d.id}» de specimen.yaml no tiene nombre aquí, así que no se marca en el diente.`,
			`Añade bajo features: ${d.id}: ${d.shown}`,
		),
	'feature-not-translated': (d) =>
		say(
			`El lugar «${d.id}» no tiene nombre aquí; el público lo ve en ${tongue(d.language)}.`,
			`Añade su traducción bajo features: ${d.id}: ${d.shown}`,
		),
	'name-without-feature': (d) =>
		say(
			`specimen.yaml no marca ningún lugar «${short(d.id)}», así que este nombre no se muestra.${didYouMean(d.meant)}`,
			d.meant
				? `Escribe ${d.meant} en lugar de ${short(d.id)}.`
				: `Borra la línea, o añade a specimen.yaml: - { id: ${short(d.id)}, at: 0.6, where: distal }`,
		),
};
