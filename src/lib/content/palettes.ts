import type { Region } from '../domain/mesh/triMesh';
import type { Preservation } from './exhibit';

/** sRGB, 0 .. 255 */
export type Rgb = readonly [number, number, number];

/**
 * Colour of each part of a tooth's surface by the way it has been preserved.
 * Enamel is the reference; carinae and ridges catch wear and are a little lighter; worn facets and
 * dentine are lighter and duller; resorption pits and the pulp cavity are dark.
 *
 * black   phosphate stained by iron and manganese: black-brown enamel, dark-grey root
 * tan     chalk and sandstone: brown enamel, buff root
 * honey   amber enamel, pale root
 * grey    blue-grey enamel, ash root
 * living  ivory enamel, cream root
 *
 * The colours are a choice of ours by eye; common practice, no source.
 */
export const PALETTES: Readonly<Record<Preservation, Readonly<Record<Region, Rgb>>>> = {
	black: {
		enamel: [46, 36, 31],
		carina: [66, 52, 43],
		ridge: [56, 44, 37],
		facet: [112, 97, 84],
		dentine: [99, 88, 78],
		root: [84, 80, 77],
		pit: [34, 30, 28],
		pulp: [26, 23, 21],
	},
	tan: {
		enamel: [146, 104, 66],
		carina: [174, 131, 88],
		ridge: [160, 117, 76],
		facet: [206, 178, 140],
		dentine: [195, 164, 125],
		root: [183, 158, 124],
		pit: [88, 66, 47],
		pulp: [66, 49, 36],
	},
	honey: {
		enamel: [193, 124, 45],
		carina: [216, 153, 72],
		ridge: [205, 138, 57],
		facet: [232, 200, 146],
		dentine: [224, 188, 132],
		root: [214, 187, 141],
		pit: [112, 73, 34],
		pulp: [82, 53, 27],
	},
	grey: {
		enamel: [104, 109, 115],
		carina: [135, 139, 143],
		ridge: [119, 124, 129],
		facet: [178, 177, 172],
		dentine: [166, 164, 158],
		root: [150, 146, 138],
		pit: [62, 62, 63],
		pulp: [44, 44, 45],
	},
	living: {
		enamel: [231, 217, 188],
		carina: [240, 230, 207],
		ridge: [235, 223, 197],
		facet: [214, 188, 143],
		dentine: [208, 180, 135],
		root: [213, 192, 153],
		pit: [132, 101, 74],
		pulp: [104, 75, 57],
	},
};
