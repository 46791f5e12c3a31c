import type { RoomId, Screen } from '../exhibit';

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type Weekday = (typeof WEEKDAYS)[number];

/** When a screen is lit on some days of the week; minutes after midnight, local time of the screen, 0 .. 1440. */
export interface OpenHours {
	days: readonly Weekday[];
	from_min: number;
	/** from here until the end the attract loop is darker; absent = never */
	dimFrom_min?: number;
	/** at most `from_min`: on the next day */
	until_min: number;
}

/** What is particular to one screen; whatever is absent is as the exhibit has it. */
export interface ScreenSettings {
	/** the name in `?screen=` */
	id: string;
	/** for staff */
	title: string;
	/** rooms on its start screen in this order, all of them rooms of the exhibit; the others cannot be opened from it */
	rooms?: readonly RoomId[];
	screen?: Screen;
	/** loudest amplitude of its sound, 0 .. 100; 0 = silent */
	volumePercent?: number;
	/** layout at the beginning of each visit */
	reach?: 'usual' | 'low';
	/** code of the language in which it starts */
	firstLanguage?: string;
	/** false = nothing can be printed from it */
	printer?: boolean;
	/** absent = lit always; days that are not named are dark */
	hours?: readonly OpenHours[];
	/** when it loads its page anew, minutes after midnight */
	reloadAt_min?: number;
	/** after hours: how long it stays lit after the last touch, minutes */
	staysLit_min?: number;
}

/** Name that a visitor's own device has: no screen of the gallery may bear it. */
export const OWN_DEVICE = 'own';

/** Usual time of the nightly reload, minutes after midnight. */
export const RELOAD_AT_min = 4 * 60;
/** Usual time for which a touch lights a screen after hours, minutes. */
export const STAYS_LIT_min = 10;
