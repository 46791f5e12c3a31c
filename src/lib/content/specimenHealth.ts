/** How complete one specimen's files are, for the staff's overview; plain data for a page. */
export interface SpecimenHealth {
	/** its folder */
	id: string;
	/** as on the box; empty where the file cannot be read */
	accession: string;
	/** in the page's language, else the first; empty where no label can be read */
	title: string;
	/** null while no shape is prepared */
	pictureUrl: string | null;
	/** in the exhibit's order */
	languages: LanguageHealth[];
	shape: ShapeHealth;
	/** works that it names, and how many of those are only recalled */
	sources: number;
	recalled: number;
	/** web address; null where the file cannot be read */
	licence: string | null;
	/** of the prepared shape; null while there is none */
	triangles: number | null;
	/** size of the scan's file, MB (1 000 000 bytes); null for a model */
	scan_MB: number | null;
	/** marked places */
	features: number;
	state: ShownState;
	/** YYYY-MM-DD, of a state that begins or ends on a day; else null */
	day: string | null;
	errors: number;
	warnings: number;
}

export interface LanguageHealth {
	code: string;
	/** partly: a marked place or the picture in words is not there in that language; broken: its file has an error */
	words: 'whole' | 'partly' | 'missing' | 'broken';
	/** there is a recording of the label */
	sound: boolean;
}

/** model: measured on the model; scan, marked: measured on a scan, without and with marks; unmarked: cannot be measured yet; none: no shape */
export type ShapeHealth = 'model' | 'scan' | 'marked' | 'unmarked' | 'none';

/**
 * until: shown, up to a day; later, over: its days have not come, or are gone; older: its last good version is shown;
 * broken: a mistake keeps it away, and there is no last good version
 */
export type ShownState = 'shown' | 'until' | 'later' | 'over' | 'draft' | 'older' | 'broken';
