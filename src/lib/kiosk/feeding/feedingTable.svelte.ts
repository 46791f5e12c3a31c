import { createContext } from 'svelte';
import type { FeedingView } from '../../content/feedingView';
import { biterOf, type Biter } from '../../domain/feeding/biter';
import { evidenceOf } from '../../domain/feeding/evidence';
import { CORNERS, MIDDLE, type Corner, type Position } from '../../domain/feeding/position';
import { scaledBeam, scaledIndenter } from '../../domain/feeding/scaled';
import { measureCrown } from '../../domain/measure/measureCrown';
import type { CrownMeasures } from '../../domain/measure/crownMeasures';
import type { GridTooth } from '../../domain/tooth/sculptGrid';
import { MeasureDesk } from './measureDesk';
import { ToothLattice } from './toothLattice';

export const STEPS = ['shape', 'bite', 'size', 'ours', 'jaw', 'ridges'] as const;
export type Step = (typeof STEPS)[number];

/** Crown heights that the size slider reaches, mm. */
export const SIZES_mm = { least: 8, most: 80 } as const;

/** Which of the corners a place lies at: one, two it lies between, or all three (the middle). */
export type Zone = Corner | 'pierce-cut' | 'cut-crush' | 'pierce-crush' | 'middle';

/** share from which a place counts as at a corner, and up to which the third corner has nothing to say */
const AT_CORNER = 0.6;
const NO_SAY = 0.2;

export function zoneOf(place: Position): Zone {
	const corner = CORNERS.find((name) => place[name] >= AT_CORNER);
	if (corner) return corner;
	if (place.crush < NO_SAY) return 'pierce-cut';
	if (place.pierce < NO_SAY) return 'cut-crush';
	if (place.cut < NO_SAY) return 'pierce-crush';
	return 'middle';
}

/** A biter at `k` times its size. */
export const scaledBiter = (biter: Biter, k: number): Biter => ({
	...biter,
	crownHeight_mm: biter.crownHeight_mm * k,
	indenter: scaledIndenter(biter.indenter, k),
	beam: scaledBeam(biter.beam, k),
	face: { radius_mm: biter.face.radius_mm * k, halfWidth_mm: biter.face.halfWidth_mm * k },
});

/** What the visitor does in the feeding guide: which tooth is in front, how large, and what has been measured of it. */
export class FeedingTable {
	step = $state<Step>('shape');
	place = $state.raw<Position>(MIDDLE);
	/** the tooth in front is this many times its own size */
	size = $state(1);
	readonly lattice: ToothLattice;
	readonly tooth: GridTooth = $derived.by(() => this.lattice.at(this.place));
	readonly zone: Zone = $derived(zoneOf(this.place));
	readonly height_mm: number = $derived(this.tooth.marks.apex[1] * this.size);
	/** of the tooth in front at its own size; a moment behind while it changes */
	measures = $state.raw<CrownMeasures | null>(null);
	readonly biter: Biter | null = $derived.by(() =>
		this.measures ? scaledBiter(this.biterFrom(this.measures), this.size) : null,
	);
	#feeding: () => FeedingView;
	#corners = new Map<Corner, Biter>();
	#desk: MeasureDesk | null = null;

	constructor(feeding: () => FeedingView) {
		this.#feeding = feeding;
		this.lattice = new ToothLattice(feeding().thresholds);
	}

	biterFrom(measures: CrownMeasures): Biter {
		return biterOf(measures, evidenceOf(measures, this.#feeding().thresholds));
	}

	/** The tooth of a corner, ready to bite, at the size now chosen. */
	cornerBiter(corner: Corner): Biter {
		let biter = this.#corners.get(corner);
		if (!biter) {
			const { mesh, marks } = this.lattice.corner(corner);
			const measured = measureCrown(mesh, { marks });
			if (!measured.ok) throw new Error(`FeedingTable: ${measured.problem.code}`);
			biter = this.biterFrom(measured.value);
			this.#corners.set(corner, biter);
		}
		return scaledBiter(biter, this.size);
	}

	/** Sets the size by crown height, mm, within the slider's ends. */
	setHeight(height_mm: number): void {
		const within = Math.min(SIZES_mm.most, Math.max(SIZES_mm.least, height_mm));
		this.size = within / this.tooth.marks.apex[1];
	}

	/** Has the tooth now in front measured in the background. */
	measure(): void {
		this.#desk ??= new MeasureDesk((measures) => (this.measures = measures));
		this.#desk.ask(this.tooth);
	}

	/** Measures it now, if nothing has been measured yet. */
	measureNow(): void {
		if (this.measures) return;
		const { mesh, marks } = this.tooth;
		const measured = measureCrown(mesh, { marks });
		if (measured.ok) this.measures = measured.value;
	}

	/** Ends the measuring in the background. */
	close(): void {
		this.#desk?.close();
		this.#desk = null;
	}
}

export const [getFeedingTable, setFeedingTable] = createContext<FeedingTable>();
