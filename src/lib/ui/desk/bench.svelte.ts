/** One tooth on the desk: its marks, their history, and what they mean on the shape that is shown. */
import type { FeatureKind, MarkedFeature } from '../../content/exhibit';
import { toTooth, type FileFrame } from '../../content/fileFrame';
import type { CrownMarks } from '../../domain/measure/crownMeasures';
import { markedFrame, type MarkedFrame } from '../../domain/measure/markedFrame';
import {
	crownDirection,
	heightOnCrown,
	placeOnCrown,
	type CrownPlace,
} from '../../domain/measure/placeOnCrown';
import { vec3, type Vec3 } from '../../domain/vec3';
import type { StageView, SurfaceHit } from '../../stage/api';
import { History } from './history.svelte';
import {
	CROWN_STEPS,
	crownMarks,
	crownPoints,
	featureMarks,
	hitToFile,
	marksToTooth,
	turnToTooth,
	upright,
	type CrownPoints,
	type CrownStep,
	type FeatureMark,
	type MarkedPoint,
	type Marks,
} from './marks';

/** What was read from the specimen's file. */
export interface MarkingFile {
	hash: string;
	crown: CrownMarks | null;
	features: readonly MarkedFeature[];
}

/** The shape that now stands in the view. */
export interface Shown {
	view: StageView;
	frame: FileFrame;
	/** what heights go by where no crown is marked */
	axialHeight_mm: number;
	labial: '+z' | '-z';
}

/** What is posted to be saved; what has not changed is left out. */
export interface MarkChanges {
	crown?: CrownMarks | null;
	features?: MarkedFeature[];
}

const NOTHING: Marks = { crown: {}, features: [] };
/** Just below the tip a section still has a middle. */
const TOPMOST = 0.995;

export class Bench {
	#history = new History<Marks>(NOTHING);
	/** as in the file */
	#written = $state.raw<MarkingFile>({ hash: '', crown: null, features: [] });
	#base = $state.raw<Marks>(NOTHING);
	#nextKey = 0;
	shown = $state.raw<Shown | null>(null);

	readonly canUndo = $derived(this.#history.canUndo);
	readonly canRedo = $derived(this.#history.canRedo);
	readonly points: CrownPoints = $derived(this.#history.now.crown);
	readonly features: readonly FeatureMark[] = $derived(this.#history.now.features);
	readonly crownChanged = $derived(this.#history.now.crown !== this.#base.crown);
	readonly featuresChanged = $derived(this.#history.now.features !== this.#base.features);
	/** something is not saved */
	readonly changed = $derived(this.crownChanged || this.featuresChanged);

	/** Marks of the crown in the file's frame; null while they are not complete. */
	readonly crown: CrownMarks | null = $derived(
		this.crownChanged ? crownMarks(this.points) : this.#written.crown,
	);
	/** some of the three points are there, but not all */
	readonly crownPartial = $derived(this.crown === null && Object.keys(this.points).length > 0);

	/** Straight lines between the pins, mm, as the measures define them. */
	readonly lengths = $derived.by(() => {
		const { apex, mesial, distal } = this.points;
		const between = (a?: MarkedPoint, b?: MarkedPoint) => (a && b ? vec3.distance(a.point, b.point) : null);
		return {
			crownHeight_mm: between(apex, distal),
			apicalLength_mm: between(apex, mesial),
			baseLength_mm: between(mesial, distal),
		};
	});

	/** The crown in the tooth frame, as marked now and as the file has it. */
	readonly #crownNow = $derived(this.#frameOf(this.crown));
	readonly #crownInFile = $derived(this.#frameOf(this.#written.crown));

	#frameOf(marks: CrownMarks | null): MarkedFrame | null {
		if (!this.shown) return null;
		const { frame, axialHeight_mm, labial } = this.shown;
		return (marks && markedFrame(marksToTooth(frame, marks))) ?? upright(axialHeight_mm, labial);
	}

	get hash(): string {
		return this.#written.hash;
	}
	get nextKey(): number {
		return this.#nextKey;
	}

	/** Takes up what the file says; what was not saved is gone. */
	read(file: MarkingFile): void {
		this.#written = file;
		this.#base = { crown: crownPoints(file.crown), features: featureMarks(file.features) };
		this.#nextKey = file.features.length;
		this.#history.restart(this.#base);
	}
	/** What is marked now has become what the file says. */
	saved(hash: string): void {
		const crown = this.crown;
		this.#written = { hash, crown, features: this.featuresToWrite() };
		this.#base = this.#history.now;
	}

	undo(): void {
		this.#history.undo();
	}
	redo(): void {
		this.#history.redo();
	}
	settle(): void {
		this.#history.settle();
	}

	/** A hit of the view in the file's frame, where marks are kept. */
	#inFile(hit: SurfaceHit): MarkedPoint | null {
		return this.shown && hitToFile(this.shown.frame, hit);
	}
	setPoint(step: CrownStep, hit: SurfaceHit, merge: string | null = null): void {
		const put = this.#inFile(hit);
		if (!put) return;
		const { crown, features } = this.#history.now;
		this.#history.change({ crown: { ...crown, [step]: put }, features }, merge);
	}
	setPoints(hits: Partial<Record<CrownStep, SurfaceHit>>): void {
		const crown: Partial<Record<CrownStep, MarkedPoint>> = {};
		for (const step of CROWN_STEPS) {
			const hit = hits[step];
			const put = hit && this.#inFile(hit);
			if (put) crown[step] = put;
		}
		this.#history.change({ crown, features: this.features });
	}
	removePoint(step: CrownStep): void {
		const { [step]: _gone, ...crown } = this.points;
		this.#history.change({ crown, features: this.features });
	}
	clearCrown(): void {
		if (Object.keys(this.points).length) this.#history.change({ crown: {}, features: this.features });
	}

	/** Puts a new feature; its key comes back. */
	addFeature(id: string, kind: FeatureKind, hit: SurfaceHit): number | null {
		const point = this.#inFile(hit);
		if (!point) return null;
		const key = this.#nextKey++;
		const features = [...this.features, { key, id, kind, written: null, point }];
		this.#history.change({ crown: this.points, features });
		return key;
	}
	#changeFeature(key: number, change: Partial<FeatureMark>, merge: string | null = null): void {
		const features = this.features.map((f) => (f.key === key ? { ...f, ...change } : f));
		this.#history.change({ crown: this.points, features }, merge);
	}
	moveFeature(key: number, hit: SurfaceHit, merge: string | null = null): void {
		const point = this.#inFile(hit);
		if (point) this.#changeFeature(key, { point }, merge);
	}
	renameFeature(key: number, id: string): void {
		this.#changeFeature(key, { id });
	}
	setKind(key: number, kind: FeatureKind): void {
		this.#changeFeature(key, { kind });
	}
	removeFeature(key: number): void {
		this.#history.change({ crown: this.points, features: this.features.filter((f) => f.key !== key) });
	}

	/** A mark in the tooth frame of the shape shown, laid onto its surface where its normal is not known. */
	hitOf(mark: MarkedPoint): SurfaceHit | null {
		if (!this.shown) return null;
		const { frame, view } = this.shown;
		const point = toTooth(frame, mark.point);
		if (mark.normal) return { point, normal: turnToTooth(frame, mark.normal) };
		return view.snap(point);
	}
	/** Where a feature stands on the shape shown. */
	featureHit(feature: FeatureMark): SurfaceHit | null {
		if (feature.point) return this.hitOf(feature.point);
		const crown = this.#crownInFile;
		const view = this.shown?.view;
		if (!crown || !view || !feature.written) return null;
		const { at, where_deg } = feature.written;
		const middle = this.#middle(crown, Math.min(TOPMOST, at) * crown.axialHeight_mm);
		return view.outermost(middle, crownDirection(crown, where_deg)) ?? view.snap(middle);
	}
	#middle({ frame }: MarkedFrame, height_mm: number): Vec3 {
		const onAxis = vec3.add(frame.origin, vec3.scale(frame.normal, height_mm));
		return this.shown?.view.middleAt(frame, height_mm) ?? onAxis;
	}
	/** Height and side of a feature on the crown as it is marked now; null while no shape is shown. */
	featurePlace(feature: FeatureMark): CrownPlace | null {
		if (!feature.point && !this.crownChanged) return feature.written;
		const crown = this.#crownNow;
		const hit = this.featureHit(feature);
		if (!crown || !hit) return feature.written;
		const height_mm = heightOnCrown(crown, hit.point) * crown.axialHeight_mm;
		const { at, where_deg } = placeOnCrown(crown, hit.point, this.#middle(crown, height_mm));
		return {
			at: Math.max(-5, Math.min(1, Math.round(at * 1000) / 1000)),
			where_deg: Math.round(where_deg * 10) / 10,
		};
	}

	featuresToWrite(): MarkedFeature[] {
		return this.features.flatMap((feature) => {
			const place = this.featurePlace(feature);
			return place ? [{ id: feature.id, kind: feature.kind, ...place }] : [];
		});
	}
	/** A moved crown moves what heights and sides go by: then the features are written too. */
	changes(): MarkChanges {
		const changes: MarkChanges = {};
		if (this.crownChanged) changes.crown = this.crown;
		if (this.featuresChanged || (this.crownChanged && this.features.length > 0))
			changes.features = this.featuresToWrite();
		return changes;
	}
}
