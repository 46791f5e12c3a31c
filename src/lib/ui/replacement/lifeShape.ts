import type { TriMesh } from '../../domain/mesh/triMesh';
import { LIFE_FORMS, type Arrangement, type LifeForm } from '../../domain/replacement/lifeForm';
import { lifeScene } from '../../domain/replacement/lifeScene';
import type { MeshPart, MeshShape } from '../../stage/api';

/** Turned by an angle about the x axis through the part's origin, then moved; 16 numbers, column by column. */
function placed(tilt_deg: number, [x, y, z]: readonly [number, number, number]): number[] {
	const tilt = (tilt_deg * Math.PI) / 180;
	const [c, s] = [Math.cos(tilt), Math.sin(tilt)];
	return [1, 0, 0, 0, 0, c, s, 0, 0, -s, c, 0, x, y, z, 1];
}

/** How deep the jaw is, mm: a long root fits, and a crown that is about to erupt. */
const depthOf = ({ rootLength_mm: root, crownHeight_mm: crown }: LifeForm): number =>
	Math.max(root * 1.2, crown * 1.08 + root * 0.45);

/** The room that a whole life takes, mm: all moments are drawn at one scale. */
function lifeBounds(form: LifeForm): MeshShape['bounds'] {
	const deepest = Math.min(...form.path.map(({ z_mm }) => z_mm)) - form.halfWidth_mm;
	return {
		min: [-form.halfLength_mm * JAW_LONG, -depthOf(form), deepest],
		max: [form.halfLength_mm * JAW_LONG, form.crownHeight_mm * 1.12, form.halfWidth_mm * 2.1],
	};
}

/** Length of the piece of jaw over the tooth's. */
const JAW_LONG = 1.45;

/** A piece of jaw with a rounded rim: a profile across the jaw drawn out along it; OUR drawing. */
function jawPiece(form: LifeForm, from_mm: number): TriMesh {
	const inner = Math.min(...form.path.map(({ z_mm }) => z_mm)) - form.halfWidth_mm * 0.9;
	const outer = form.halfWidth_mm * 1.45;
	const floor = -depthOf(form) * 0.97;
	const to_mm = form.halfLength_mm * JAW_LONG;
	const middle = (inner + outer) / 2;
	const half = (outer - inner) / 2;
	const profile: [number, number][] = [];
	const STEPS = 20;
	for (let i = 0; i <= STEPS; i += 1) {
		const angle = Math.PI * (1 - i / STEPS);
		// a flat rim with rounded shoulders
		const across = Math.sign(Math.cos(angle)) * Math.abs(Math.cos(angle)) ** 0.55;
		const up = Math.sin(angle) ** 0.6;
		profile.push([middle + half * across, -form.crownHeight_mm * 0.16 * (1 - up)]);
	}
	profile.push([outer, floor], [inner, floor]);
	const count = profile.length;
	const positions = new Float32Array(count * 6 + 6);
	profile.forEach(([z, y], i) => {
		positions.set([from_mm, y, z], i * 3);
		positions.set([to_mm, y, z], (count + i) * 3);
	});
	const centres = [2 * count, 2 * count + 1];
	positions.set([from_mm, floor * 0.5, middle], centres[0] * 3);
	positions.set([to_mm, floor * 0.5, middle], centres[1] * 3);
	const indices: number[] = [];
	for (let i = 0; i < count; i += 1) {
		const next = (i + 1) % count;
		indices.push(i, next, count + i, next, count + next, count + i);
		indices.push(centres[0], next, i, centres[1], count + i, count + next);
	}
	const regions = new Uint8Array(indices.length / 3).fill(5); // root: rough bone
	return { positions, indices: Uint32Array.from(indices), regions };
}

const jaws = new Map<string, TriMesh>();

/** One moment of a tooth's life as a shape for the stage: the teeth, and the piece of jaw round them. */
export function lifeShape(arrangement: Arrangement, u: number, cut: boolean): MeshShape {
	const form = LIFE_FORMS[arrangement];
	const scene = lifeScene(arrangement, u, { cut });
	const parts: MeshPart[] = scene.parts.map(({ id, mesh, transform, life }) => ({
		id,
		mesh,
		place: placed(transform.tilt_deg, transform.move_mm),
		opacity: life > 1 ? Math.max(0.15, 1 - ((life - 1) / 0.04) ** 2) : 1,
		// the followed tooth is the brightest
		tint:
			id === 'tooth'
				? { rgb: [255, 246, 226] as const, share: 0.4 }
				: { rgb: [58, 44, 34] as const, share: 0.35 },
	}));
	const key = `${arrangement} ${cut}`;
	let jaw = jaws.get(key);
	if (!jaw) {
		jaw = jawPiece(form, cut ? form.halfLength_mm * 0.06 : -form.halfLength_mm * JAW_LONG);
		jaws.set(key, jaw);
	}
	parts.push({
		id: 'jaw',
		mesh: jaw,
		opacity: cut ? 0.9 : 0.3,
		tint: { rgb: [196, 116, 98], share: 0.8 },
	});
	return {
		parts,
		preservation: 'living',
		bounds: lifeBounds(form),
		crownHeight_mm: form.crownHeight_mm,
		noShadow: true,
	};
}
