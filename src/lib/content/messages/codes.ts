/** What a message may be about, as codes; the words for them stand with each language. */

export type Unit = 'um' | 'mm' | 'cm' | 'm' | 'in';
/** Points of a marked crown. */
export type Mark = 'apex' | 'baseMesial' | 'baseDistal';
/** A unit that stands in the name of a line, or serrations, which are counted on 5 mm. */
export type Measure =
	'mm' | 'm' | 'deg' | 's' | 'in' | 'd' | 'um' | 'mm3' | 'px' | 'mpa' | 'gpa' | 'kg' | 'ma' | 'serrations';
/** What a missing file holds. */
export type Holds = 'exhibit' | 'sources' | 'screen-words' | { of: 'bed' | 'group' | 'specimen'; id: string };
/** Why a screen text cannot be filled in. */
export type MessageFault =
	| 'brace-open'
	| 'apostrophe-open'
	| 'brace-empty'
	| 'bad-filler'
	| 'no-type'
	| 'bad-type'
	| 'no-other'
	| 'bad-choices'
	| 'tag';
/** What only outlines may not hold; `part` is any other element, by its name. */
export type DrawingFault =
	| 'script'
	| 'style'
	| 'link'
	| 'picture'
	| 'lettering'
	| 'rectangle'
	| 'circle'
	| 'ellipse'
	| 'line'
	| 'polygon'
	| 'transform'
	| 'part';
/** What cannot be shown without a file of the folder `feeding/`. */
export type FeedingLoss = 'room' | 'prey' | 'guilds' | 'ridges' | 'everyday';
/** Why a scan is hardly one tooth; `n` pieces, or openings right through it. */
export type Doubt = { is: 'pieces' | 'openings'; n: number } | { is: 'hollow' | 'row' };
/** Why a scan could not be read. */
export type ScanFaultCode =
	| 'empty'
	| 'truncated'
	| 'not-a-mesh'
	| 'unknown-format'
	| 'unit-missing'
	| 'count-lies'
	| 'damaged'
	| 'not-a-number'
	| 'index-out-of-range'
	| 'no-triangles'
	| 'no-area'
	| 'loose-triangles'
	| 'too-large'
	| 'compressed-unreadable'
	| 'feature-unknown'
	| 'nested-too-deep'
	| 'external-file-missing';
/** Why a surface could not be measured. */
export type MeasureFaultCode = 'empty' | 'not-a-number' | 'bad-index' | 'no-area' | 'no-base' | 'no-height';
/** What to do about a scan that could not be measured. */
export type MeasureAdvice = 'mark' | 'check-marks' | 'check-file';
