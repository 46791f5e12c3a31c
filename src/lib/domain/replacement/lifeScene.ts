import { clipHalfSpace } from '../mesh/clipHalfSpace';
import type { Region, TriMesh } from '../mesh/triMesh';
import { isClosed } from '../tooth/isClosed';
import type { Vec3 } from '../vec3';
import { growTooth, leanAt, outerAt, type Growth, type GrowDetail, type Taken } from './growTooth';
import { LIFE_FORMS, type Arrangement, type LifeForm } from './lifeForm';
import { lifeStage, lifeTimes, STAGE_STARTS, type LifeStage } from './lifeStage';
import { toothBud } from './toothBud';

/** tooth = the one whose life is followed; old, older = those before it; next, afterNext = those that come after */
export type LifePartId = 'older' | 'old' | 'tooth' | 'next' | 'afterNext';

export interface LifePart {
	id: LifePartId;
	/** where this tooth is in its own life, 0 .. 1; a little above 1 while it falls away */
	life: number;
	stage: LifeStage;
	/** in the part's own tooth frame, closed, with regions; a germ without hard tissue is all `pulp` */
	mesh: TriMesh;
	/** from the part's frame to the jaw's: turned by `tilt_deg` about the x axis through its crown's base, then moved */
	transform: { move_mm: Vec3; tilt_deg: number };
}

/** A tooth with those before and after it, in the jaw's frame: y = 0 is the gum, +z the lip side, mm. */
export interface LifeScene {
	arrangement: Arrangement;
	u: number;
	/** stage of the followed tooth */
	stage: LifeStage;
	parts: LifePart[];
}

export interface LifeOptions {
	/** cut lengthwise, lip to tongue; the half with x >= 0 is kept and the cut face is `dentine` */
	cut?: boolean;
	detail?: GrowDetail;
}

/** How long a shed crown is still seen falling, in lives. */
export const FALLING = 0.04;
/** Room that the soft tissue round a growing crown takes, over its half width. */
const SOFT = 0.16;

/** One tooth's life at u = 0 (germ) .. 1 (shed), with the teeth before and after it. The same u gives the same scene. */
export function lifeScene(arrangement: Arrangement, u: number, options: LifeOptions = {}): LifeScene {
	const form = LIFE_FORMS[arrangement];
	const { share } = form;
	const parts: LifePart[] = [];
	const add = (id: LifePartId, life: number): void => {
		if (life >= 0 && life <= 1 + FALLING) parts.push(lifePart(form, id, life, options));
	};
	add('older', u + 2 * share);
	add('old', u + share);
	add('tooth', u);
	add('next', u - share);
	add('afterNext', u - 2 * share);
	return { arrangement, u, stage: lifeStage(u, share), parts };
}

function lifePart(form: LifeForm, id: LifePartId, life: number, options: LifeOptions): LifePart {
	const stage = lifeStage(Math.min(1, life), form.share);
	const { below } = lifeTimes(life, form.share);
	const transform = placeAt(form, life);
	const soft = below < STAGE_STARTS.crown;
	const whole = soft ? toothBud(form, below) : worn(form, life, hardPart(form, life, options));
	const mesh = options.cut ? cutOpen(whole, form, soft ? 'pulp' : 'dentine') : whole;
	return { id, life, stage, mesh, transform };
}

/** Where else to cut when an edge of the surface lies in the plane and its outline touches itself, over the half length. */
const CUTS = [0, 0.01, -0.01, 0.03, -0.03, 0.06, -0.06];

/** The half with x >= 0, closed by a flat face. */
function cutOpen(whole: TriMesh, form: LifeForm, face: Region): TriMesh {
	for (const shift of CUTS) {
		const offset_mm = shift * form.halfLength_mm;
		const half = clipHalfSpace(whole, { normal: [-1, 0, 0], offset_mm }, face);
		if (half && isClosed(half)) return half;
	}
	return whole;
}

const hardPart = (form: LifeForm, life: number, options: LifeOptions): TriMesh =>
	growTooth(form, growthAt(form, life), options.detail);

/** How much of a tooth there is at a time of its life. */
export function growthAt(form: LifeForm, life: number): Growth {
	const { below, above } = lifeTimes(life, form.share);
	const { crownHeight_mm: high, rootLength_mm: root } = form;
	const crown = ease((below - STAGE_STARTS.crown) / (form.crownUntil - STAGE_STARTS.crown));
	const rooted = 0.3 * ease((below - 0.8) / 0.2) + 0.7 * ease(above / 0.35);
	const eaten = resorbedAt(form, life);
	const shrunk = (eaten - form.shrinksFrom) / (1 - form.shrinksFrom);
	const left = Math.min(rooted, 1 - 0.9 * ease(shrunk));
	return {
		depth_mm: high * (0.1 + 0.9 * crown) + root * left,
		filled: 0.35 * ease((below - 0.3) / 0.7) + 0.65 * ease(above / 0.7),
		bays_mm: 0.09 * root * ease(shrunk / 0.3) * Math.max(0.3, left),
		taken: takenBy(form, life - form.share),
	};
}

/** How far the root has been resorbed from below, 0 .. 1: it begins with the successor's pit stage. */
export function resorbedAt(form: LifeForm, life: number): number {
	const successor = life - form.share;
	if (successor <= 0) return 0;
	const { below } = lifeTimes(successor, form.share);
	return Math.min(1, Math.max(0, (below - STAGE_STARTS.pit) / (1 - STAGE_STARTS.pit)));
}

/** The space of a successor at a time of its own life, in its predecessor's frame. */
export function takenBy(form: LifeForm, life: number): Taken | null {
	const { below } = lifeTimes(life, form.share);
	if (life <= 0 || below <= STAGE_STARTS.crown) return null;
	const { depth_mm } = growthAt(form, Math.min(life, 1 - form.share));
	const { move_mm } = placeAt(form, Math.min(life, 1 - form.share));
	const soft = SOFT * form.halfWidth_mm;
	const tip = move_mm[1] + form.crownHeight_mm;
	return (y) => {
		const depth = tip - y;
		if (depth < -soft || depth > depth_mm + soft) return null;
		const at = Math.min(Math.max(depth, 0), depth_mm);
		const { halfLength_mm, halfWidth_mm } = outerAt(form, at);
		// rounded over the tip and under the rim
		const over = Math.abs(depth - at) / soft;
		const room = soft * Math.sqrt(Math.max(0, 1 - over * over));
		return {
			z_mm: move_mm[2] + leanAt(form, at),
			halfLength_mm: halfLength_mm * (over > 0 ? Math.sqrt(1 - over * over) : 1) + room,
			halfWidth_mm: halfWidth_mm * (over > 0 ? Math.sqrt(1 - over * over) : 1) + room,
		};
	};
}

/** Where a tooth stands at a time of its life. */
export function placeAt(form: LifeForm, life: number): LifePart['transform'] {
	const { below, above } = lifeTimes(life, form.share);
	const { crownHeight_mm: high, path } = form;
	const last = path[path.length - 1];
	if (life > 1) {
		// let go: it tips to the lip side and drops away
		const t = Math.min(1, (life - 1) / FALLING);
		return { move_mm: [0, high * (0.1 + 0.9 * t - 0.4 * t * t), high * 0.9 * t], tilt_deg: 70 * t * t };
	}
	if (below < 1) {
		const k = Math.max(
			1,
			path.findIndex((stop) => stop.below >= below),
		);
		const [a, b] = [path[k - 1], path[k]];
		const t = smooth((below - a.below) / (b.below - a.below));
		const y = a.y_mm + (b.y_mm - a.y_mm) * t;
		return { move_mm: [0, y - high, a.z_mm + (b.z_mm - a.z_mm) * t], tilt_deg: 0 };
	}
	const up = ease(above / STAGE_STARTS.erupted);
	const lift = 0.1 * high * ease((resorbedAt(form, life) - 0.75) / 0.25);
	return {
		move_mm: [0, (last.y_mm - high) * (1 - up) + lift, last.z_mm * (1 - up)],
		tilt_deg: 0,
	};
}

/** Wears a tooth in use: first the tip, then a facet on the lip side, then one on the tongue side; each a true plane. */
function worn(form: LifeForm, life: number, mesh: TriMesh): TriMesh {
	const { above } = lifeTimes(life, form.share);
	const { crownHeight_mm: high, halfWidth_mm: half } = form;
	const planes = [
		{ from: 0.3, depth_mm: 0.13 * high, tilt_deg: 8 },
		{ from: 0.5, depth_mm: 0.26 * half, tilt_deg: 72 },
		{ from: 0.7, depth_mm: 0.16 * half, tilt_deg: -74 },
	];
	let left = mesh;
	for (const { from, depth_mm, tilt_deg } of planes) {
		const t = (above - from) / (1 - from);
		if (t <= 0) continue;
		const tilt = (tilt_deg * Math.PI) / 180;
		const normal: Vec3 = [0, Math.cos(tilt), Math.sin(tilt)];
		left =
			clipHalfSpace(left, { normal, offset_mm: crownReach(form, normal) - depth_mm * t }, 'facet') ?? left;
	}
	return left;
}

/** How far the unworn crown reaches in a direction, mm. */
function crownReach(form: LifeForm, normal: Vec3): number {
	const { crownHeight_mm: high } = form;
	let reach = -Infinity;
	for (let i = 0; i <= 40; i++) {
		const depth = (0.55 * high * i) / 40;
		const side = outerAt(form, depth).halfWidth_mm * Math.abs(normal[2]);
		reach = Math.max(reach, normal[1] * (high - depth) + normal[2] * leanAt(form, depth) + side);
	}
	return reach;
}

const within = (t: number): number => Math.min(1, Math.max(0, t));
const smooth = (t: number): number => within(t) ** 2 * (3 - 2 * within(t));
const ease = smooth;
