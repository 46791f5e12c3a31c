import type { DeskFile } from './specimenDesk';

/** A room that is open, and the days on which it is; an empty day is no bound. */
export interface OpenRoom {
	room: string;
	from: string;
	until: string;
}

/** What the page of rooms and order sends to have exhibit.yaml changed. */
export interface ArrangeRequest {
	file: DeskFile;
	/** open ones, in order; absent = as they are */
	rooms?: OpenRoom[];
	/** every specimen, in order; absent = as they are */
	specimens?: string[];
}
