import { cleanScreenName } from '../../content/screens/shownOn';
import type { ScreenBeat } from '../../content/screens/beat';

/**
 * well    beats come
 * late    a beat is missing: the screen has been asked to restart
 * hung    no answer to that either, or its own watcher says that the page stands still: its browser has to be restarted
 * closed  the page said that it goes away
 */
export type ScreenHealth = 'well' | 'late' | 'hung' | 'closed';

/** Two beats missed, and a little for a slow machine. */
export const LATE_AFTER_s = 75;
export const HUNG_AFTER_s = 150;
/** Browsers let a hidden page act about once a minute. */
const HIDDEN_TIMES = 4;
const FORGET_AFTER_s = 24 * 3600;
/** A screen without a name is known by its page alone, which never comes back. */
const FORGET_NAMELESS_AFTER_s = 600;
export const MOST_SCREENS = 200;
/** Two pages that take turns within this time share one name. */
const TURNS_WITHIN_s = 90;

export interface ScreenReport {
	/** the name, or the page's id where there is none */
	key: string;
	name: string | null;
	health: ScreenHealth;
	/** seconds since the last beat */
	age_s: number;
	/** it can be told to restart: its connection for updates is open */
	reachable: boolean;
	/** how often it stood still, or stopped beating, since the server started */
	hangs: number;
	/** another page has the same name */
	twice: boolean;
	/** told to restart, and not come back yet */
	restarting: boolean;
	beat: ScreenBeat;
}

export interface ScreenRegistry {
	beat(beat: ScreenBeat): void;
	/** a page's own watcher says that it stands still */
	hung(name: string | null, page: string): void;
	/** A page listens for orders; returns what ends that. */
	listen(name: string | null, page: string, restart: () => void): () => void;
	/** Tells a screen to load its page anew; false where nobody listens under that key. */
	restart(key: string): boolean;
	/** Looks at the clock: asks late screens to restart, forgets old ones. Every few seconds. */
	tick(): void;
	list(): ScreenReport[];
}

interface Entry {
	key: string;
	name: string | null;
	beat: ScreenBeat;
	seen_ms: number;
	toldHung: boolean;
	health: ScreenHealth;
	hangs: number;
	/** the page before this one, and when it last beat */
	before: { page: string; seen_ms: number } | null;
	twiceUntil_ms: number;
	restarting: boolean;
}

export interface RegistryTools {
	/** monotonic, ms */
	now: () => number;
	/** after each change of a screen's health, and each beat */
	onChange?: (report: ScreenReport, what: 'beat' | 'health' | 'forgotten') => void;
}

/** Every screen that beats, as long as it does and a day longer; in memory only. */
export function createScreenRegistry({ now, onChange = () => undefined }: RegistryTools): ScreenRegistry {
	const entries = new Map<string, Entry>();
	const listeners = new Map<string, Set<{ page: string; restart: () => void }>>();

	const keyOf = (name: string | null, page: string): string => name ?? page;
	const report = (entry: Entry): ScreenReport => ({
		key: entry.key,
		name: entry.name,
		health: entry.health,
		age_s: Math.round((now() - entry.seen_ms) / 1000),
		reachable: (listeners.get(entry.key)?.size ?? 0) > 0,
		hangs: entry.hangs,
		twice: now() < entry.twiceUntil_ms,
		restarting: entry.restarting,
		beat: entry.beat,
	});
	const to = (entry: Entry, health: ScreenHealth): void => {
		if (entry.health === health) return;
		if (entry.health === 'well' && (health === 'late' || health === 'hung')) entry.hangs++;
		entry.health = health;
		onChange(report(entry), 'health');
	};
	const tell = (key: string): boolean => {
		const heard = listeners.get(key);
		if (!heard || heard.size === 0) return false;
		for (const { restart } of [...heard]) restart();
		return true;
	};
	const forget = (entry: Entry): void => {
		entries.delete(entry.key);
		onChange(report(entry), 'forgotten');
	};

	return {
		beat(beat) {
			const key = keyOf(cleanScreenName(beat.name), beat.page);
			let entry = entries.get(key);
			if (!entry) {
				if (beat.leaving) return;
				if (entries.size >= MOST_SCREENS) {
					const oldest = [...entries.values()].reduce((a, b) => (a.seen_ms <= b.seen_ms ? a : b));
					forget(oldest);
				}
				const name = beat.name;
				const fresh = { toldHung: false, health: 'well' as const, hangs: 0, before: null, restarting: false };
				entry = { key, name, beat, seen_ms: now(), twiceUntil_ms: -Infinity, ...fresh };
				entries.set(key, entry);
			} else if (beat.page !== entry.beat.page) {
				// the last word of a page that another one has replaced says nothing of the screen
				if (beat.leaving) return;
				const { before } = entry;
				if (before?.page === beat.page && now() - before.seen_ms < TURNS_WITHIN_s * 1000)
					entry.twiceUntil_ms = now() + 2 * TURNS_WITHIN_s * 1000;
				entry.before = { page: entry.beat.page, seen_ms: entry.seen_ms };
				entry.restarting = false;
			}
			entry.beat = beat;
			entry.seen_ms = now();
			entry.toldHung = false;
			to(entry, beat.leaving ? 'closed' : 'well');
			onChange(report(entry), 'beat');
		},
		hung(name, page) {
			const entry = entries.get(keyOf(name, page));
			// a page that was replaced meanwhile
			if (!entry || entry.beat.page !== page) return;
			entry.toldHung = true;
			to(entry, 'hung');
		},
		listen(name, page, restart) {
			const key = keyOf(name, page);
			const one = { page, restart };
			if (!listeners.has(key)) listeners.set(key, new Set());
			listeners.get(key)!.add(one);
			return () => {
				const all = listeners.get(key);
				all?.delete(one);
				if (all?.size === 0) listeners.delete(key);
			};
		},
		restart(key) {
			const told = tell(key);
			const entry = entries.get(key);
			if (told && entry) entry.restarting = true;
			return told;
		},
		tick() {
			for (const entry of [...entries.values()]) {
				const age_s = (now() - entry.seen_ms) / 1000;
				const patience = entry.beat.hidden ? HIDDEN_TIMES : 1;
				const nameless = entry.name === null;
				const gone = entry.health === 'closed' || entry.health === 'hung';
				if (age_s > FORGET_AFTER_s || (nameless && gone && age_s > FORGET_NAMELESS_AFTER_s)) forget(entry);
				else if (entry.health === 'closed') continue;
				else if (entry.toldHung || age_s > HUNG_AFTER_s * patience) to(entry, 'hung');
				else if (age_s > LATE_AFTER_s * patience && entry.health === 'well') {
					to(entry, 'late');
					if (tell(entry.key)) entry.restarting = true;
				}
			}
		},
		list: () =>
			[...entries.values()].map(report).sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0)),
	};
}
