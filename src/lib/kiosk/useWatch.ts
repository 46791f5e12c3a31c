import { dwellBucket, type DwellBucket } from '../domain/use/dwell';
import { USE_STEPS, type UseEnd, type UseRoom, type UseSetting } from '../domain/use/useFacts';

/** Where the visitor is. */
export interface UsePlace {
	room: UseRoom;
	/** null = the room's first */
	step: string | null;
	/** specimens that lie there now; null = the room has not said yet */
	teeth: readonly string[] | null;
}

/** One sending: what there was, in no order that could be followed. */
export interface UseCounts {
	rooms: { room: UseRoom; dwell: DwellBucket }[];
	teeth: { room: UseRoom; specimen: string; laid: boolean; dwell: DwellBucket }[];
	left: { room: UseRoom; step: string; by: UseEnd }[];
	languages: string[];
	settings: UseSetting[];
}

export interface UseTools {
	/** monotonic, ms; jumps are borne */
	now: () => number;
	send: (counts: UseCounts) => void;
}

/**
 * After a touch somebody is taken to look and read for no longer: a label of 100 words at 120 words a minute, as a slow
 * reader reads. Time beyond it counts for nobody, and what follows the last touch of a visit that was left not at all.
 */
export const LOOKING_ms = 50_000;
/** The server takes no more in one sending. */
const MOST_TEETH = 60;

interface Stay {
	room: UseRoom;
	dwell_ms: number;
	/** `laid`: by the visitor; the others lay there already */
	teeth: Map<string, { dwell_ms: number; laid: boolean }>;
	/** the room has said which teeth lie there */
	told: boolean;
}

/**
 * Watches one visit after another and tells what is to be counted: when a room is left and when a visit ends. It has no
 * timer. A visit begins with a touch, so that a screen nobody comes to counts nothing.
 */
export class UseWatch {
	#tools: UseTools;
	#place: UsePlace | null = null;
	#stay: Stay | null = null;
	#languages = new Set<string>();
	#settings = new Set<UseSetting>();
	#last_ms = 0;

	constructor(tools: UseTools) {
		this.#tools = tools;
	}

	/** The visitor, or nobody, is here now; as often as anything of it changes. */
	here(place: UsePlace): void {
		const entered = place.room !== this.#place?.room;
		if (this.#stay) this.#addTime();
		if (this.#stay && entered) {
			this.#send(this.#stay, {});
			this.#stay = stayIn(place.room);
		}
		this.#place = place;
		this.#see();
	}

	/** A finger or key. */
	touched(): void {
		if (this.#stay) this.#addTime();
		else if (this.#place) {
			this.#last_ms = this.#tools.now();
			this.#stay = stayIn(this.#place.room);
			this.#see();
		}
	}

	choseLanguage(code: string): void {
		if (this.#stay) this.#languages.add(code);
	}

	set(setting: UseSetting): void {
		if (this.#stay) this.#settings.add(setting);
	}

	/** The visit is over, if there was one. */
	end(by: UseEnd): void {
		const stay = this.#stay;
		if (!stay) return;
		// whoever closes a page was there until now
		if (by === 'closed') this.#addTime();
		const step = this.#place?.step ?? USE_STEPS[stay.room][0];
		this.#send(stay, {
			left: [{ room: stay.room, step, by }],
			languages: [...this.#languages].sort(),
			settings: [...this.#settings].sort(),
		});
		this.#stay = null;
		this.#languages.clear();
		this.#settings.clear();
	}

	#addTime(): void {
		const now = this.#tools.now();
		const step_ms = Math.min(LOOKING_ms, Math.max(0, now - this.#last_ms));
		this.#last_ms = now;
		if (!this.#stay) return;
		this.#stay.dwell_ms += step_ms;
		for (const id of this.#place?.teeth ?? []) {
			const tooth = this.#stay.teeth.get(id);
			if (tooth) tooth.dwell_ms += step_ms;
		}
	}

	/** Notes which teeth lie here. */
	#see(): void {
		const teeth = this.#place?.teeth;
		if (!this.#stay || !teeth) return;
		for (const id of teeth)
			if (!this.#stay.teeth.has(id)) this.#stay.teeth.set(id, { dwell_ms: 0, laid: this.#stay.told });
		this.#stay.told = true;
	}

	#send(stay: Stay, end: Partial<Pick<UseCounts, 'left' | 'languages' | 'settings'>>): void {
		this.#tools.send({
			rooms: [{ room: stay.room, dwell: dwellBucket(stay.dwell_ms) }],
			teeth: [...stay.teeth]
				.slice(0, MOST_TEETH)
				.sort(([a], [b]) => (a < b ? -1 : 1))
				.map(([specimen, { laid, dwell_ms }]) => ({
					room: stay.room,
					specimen,
					laid,
					dwell: dwellBucket(dwell_ms),
				})),
			left: [],
			languages: [],
			settings: [],
			...end,
		});
	}
}

const stayIn = (room: UseRoom): Stay => ({ room, dwell_ms: 0, teeth: new Map(), told: false });
