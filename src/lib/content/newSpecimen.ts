import type { SaveAnswer } from './deskAnswers';
import type { FactFields } from './specimenDesk';
import type { UploadFormat } from './scanUpload';

/** Units that a scan may be said to be in at the desk. */
export const ASKED_UNITS = ['mm', 'cm', 'in', 'm'] as const;
export type AskedUnit = (typeof ASKED_UNITS)[number];

/** Where a new specimen's shape comes from. */
export type NewShape =
	| {
			kind: 'scan';
			/** as the upload was answered */
			upload: string;
			units: AskedUnit;
			/** what the card in the drawer says; null where it says nothing */
			crownHeight_mm: number | null;
	  }
	| {
			kind: 'model';
			/** id of the specimen whose form it begins with */
			like: string;
			crownHeight_mm: number;
			baseLength_mm: number;
			baseWidth_mm: number;
	  };

/** What is asked of a new specimen; empty texts = not there. Words are in the exhibit's first language. */
export interface NewSpecimen extends Omit<FactFields, 'status' | 'from' | 'until'> {
	id: string;
	title: string;
	short: string;
	alt: string;
	text: string;
	shape: NewShape;
}

export type NewSpecimenAnswer =
	| Extract<SaveAnswer, { ok: false }>
	| {
			ok: true;
			/** the version that undoes it */
			version: string | null;
			/** the page to go on with: its words and facts, or its marks */
			next: 'specimen' | 'mark';
	  }
	/**
	 * taken: the id is another specimen's; upload-gone: choose the scan again; no-form: the form begun with is gone; of
	 * another scan: no-scan: the file names none; not-editable: it is written in a way that cannot be changed here
	 */
	| { ok: false; failure: { code: 'taken' | 'upload-gone' | 'no-form' | 'no-scan' | 'not-editable' } };

/** Name of a scan in its specimen's folder; never that of the file that was sent. */
export const scanName = (format: UploadFormat): string => `scan.${format}`;
