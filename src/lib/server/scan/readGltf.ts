/*
 * Our own reader, not the one of @gltf-transform/core: that one reads everything (a missing or broken picture, an
 * animation or a material extension then hides a sound surface), believes the counts of the description
 * before it has looked at the data, and walks the scene by recursion. The unpackers are those of the Draco and
 * meshoptimizer projects.
 */
import { asTriangles } from './asTriangles';
import { tooManyTriangles, tooManyVertices, noSuchCorner } from './faceList';
import { gltfAccessor } from './gltfAccessor';
import { Budget, gltfBuffers, type Sibling } from './gltfBuffers';
import { gltfContainer } from './gltfContainer';
import { gltfDraco } from './gltfDraco';
import { placedMeshes, type Matrix } from './gltfScene';
import { gltfSkins, type GltfSkins, type Look, type OpenPicture } from './gltfSkins';
import { entry, extension, fields, list, type Fields, type Gltf } from './gltfTypes';
import { LIMITS } from './limits';
import { encoded } from './paint';
import type { RawMesh } from './rawMesh';
import { ScanFault } from './scanProblem';

/** Extensions that change where the triangles are, and that are understood here. */
const UNDERSTOOD = new Set([
	'KHR_draco_mesh_compression',
	'EXT_meshopt_compression',
	'KHR_meshopt_compression',
	'KHR_mesh_quantization',
]);
/** Extensions that only change how a surface looks. */
const LOOKS_ONLY = /material|texture|light|image|animation|xmp|audio|visibility|variant/i;

interface Part {
	positions: Float32Array;
	indices: Uint32Array;
	/** colours of the corners, times the material's own */
	colours: Uint8Array | null;
	/** colour of the material alone, 0 .. 255 */
	plain: readonly number[];
	/** places on a picture and its number */
	uv: Float32Array | null;
	skin: number;
}

/**
 * Reads the triangles of all meshes of a glTF's scene, in its own unit (metres), and their colours; pictures only with
 * `openPicture`. Throws ScanFault, but not for anything that concerns colour alone.
 */
export async function readGltf(
	bytes: Uint8Array,
	format: 'glb' | 'gltf',
	sibling?: Sibling,
	openPicture?: OpenPicture,
): Promise<RawMesh> {
	const { json, binary } = gltfContainer(bytes, format);
	refuseUnknown(json);
	const budget = new Budget();
	const view = gltfBuffers(json, binary, budget, sibling);
	const skins = gltfSkins(json, view, openPicture, sibling);
	const placed = placedMeshes(json);
	const meshes = list(json.meshes, 'meshes');
	const parts = new Map<Fields, Part | null>();
	const wanted: { part: Part; matrix: Matrix }[] = [];
	let triangles = 0;
	let vertices = 0;
	for (const { mesh, matrix } of placed) {
		for (const primitive of list(entry(meshes, mesh, 'mesh').primitives, 'primitives')) {
			if (!fields(primitive)) throw new ScanFault('damaged', 'Its description is wrong: an empty primitive.');
			let part = parts.get(primitive);
			if (part === undefined)
				parts.set(primitive, (part = await readPart(json, primitive, view, budget, skins)));
			if (!part) continue;
			// one mesh may stand in many places: the sum counts
			triangles += part.indices.length / 3;
			vertices += part.positions.length / 3;
			if (triangles > LIMITS.triangles) throw tooManyTriangles();
			if (vertices > LIMITS.vertices || wanted.length > 1e6) throw tooManyVertices();
			wanted.push({ part, matrix });
		}
	}
	return joined(wanted, triangles, vertices, skins);
}

function refuseUnknown(json: Gltf): void {
	const required = Array.isArray(json.extensionsRequired) ? json.extensionsRequired : [];
	for (const name of required as unknown[]) {
		if (typeof name !== 'string' || UNDERSTOOD.has(name) || LOOKS_ONLY.test(name)) continue;
		const packed = /compress|draco|meshopt|quantiz/i.test(name);
		throw new ScanFault(
			packed ? 'compressed-unreadable' : 'feature-unknown',
			packed
				? `It is packed in a way that is not known (${name.slice(0, 60)}).`
				: `It cannot be read without an extension that is not known (${name.slice(0, 60)}).`,
		);
	}
}

async function readPart(
	json: Gltf,
	primitive: Fields,
	view: ReturnType<typeof gltfBuffers>,
	budget: Budget,
	skins: GltfSkins,
): Promise<Part | null> {
	const mode = primitive.mode ?? 4;
	if (typeof mode !== 'number' || !Number.isInteger(mode) || mode < 0 || mode > 6) {
		throw new ScanFault('damaged', 'Its description is wrong: a surface of an unknown kind.');
	}
	const attributes = fields(primitive.attributes) ?? {};
	if (mode < 4 || attributes.POSITION === undefined) return null; // points and lines
	const accessors = list(json.accessors, 'accessors');
	const position = entry(accessors, attributes.POSITION, 'accessor');
	if (position.type !== 'VEC3' || position.componentType === 5125) {
		throw new ScanFault('damaged', 'Its description is wrong: points without x, y and z.');
	}
	const look = await skins.lookOf(primitive);
	const packed = extension(primitive, 'KHR_draco_mesh_compression');
	if (packed) {
		const colour = attributes.COLOR_0 === undefined ? null : entry(accessors, attributes.COLOR_0, 'accessor');
		const name = look.uvName;
		const uv = name === null ? null : { name, accessor: entry(accessors, attributes[name], 'accessor') };
		const part = await gltfDraco(packed, { position, colour, uv }, view, budget);
		// Draco hands out separate triangles, whatever the mode says
		return finished(part.positions, part.indices, part.colours, look, part.uv);
	}
	const points = await gltfAccessor(json, attributes.POSITION, view, budget, 'values');
	let order: Uint32Array;
	if (primitive.indices === undefined) order = Uint32Array.from({ length: points.count }, (_, i) => i);
	else order = (await gltfAccessor(json, primitive.indices, view, budget, 'indices')).values as Uint32Array;
	for (let k = 0; k < order.length; k++) {
		if (order[k] >= points.count) throw noSuchCorner(order[k], points.count);
	}
	const tints =
		attributes.COLOR_0 === undefined
			? null
			: await gltfAccessor(json, attributes.COLOR_0, view, budget, 'values');
	const uv = await skins.places(primitive, look);
	return finished(points.values as Float32Array, asTriangles(order, mode), tints, look, uv);
}

/** Colours are kept when there is one for every corner; they become 0 .. 255 in the curve that screens use. */
function finished(
	positions: Float32Array,
	indices: Uint32Array,
	tints: { values: ArrayLike<number>; width: number } | null,
	{ factor, skin, turn }: Look,
	places: Float32Array | null,
): Part {
	const count = positions.length / 3;
	const uv = skin > 0 && places?.length === count * 2 ? turn(places) : null;
	const plain = factor.map((light) => Math.round(encoded(light)));
	const part = { positions, indices, plain, uv, skin: uv ? skin : 0 };
	if (!tints || tints.width < 3 || tints.values.length !== count * tints.width) {
		return { ...part, colours: null };
	}
	const colours = new Uint8Array(count * 3);
	for (let i = 0; i < count; i++) {
		for (let k = 0; k < 3; k++) {
			colours[i * 3 + k] = Math.round(encoded(tints.values[i * tints.width + k] * factor[k]));
		}
	}
	return { ...part, colours };
}

function joined(
	wanted: readonly { part: Part; matrix: Matrix }[],
	triangles: number,
	vertices: number,
	{ skins, warnings }: GltfSkins,
): RawMesh {
	const positions = new Float64Array(vertices * 3);
	const indices = new Uint32Array(triangles * 3);
	// a material's one colour for all is no colour of the tooth's own, unless other parts have more
	const coloured = wanted.some(({ part }) => part.colours ?? part.uv);
	const colours = coloured ? new Uint8Array(vertices * 3) : undefined;
	const painted = wanted.some(({ part }) => part.uv);
	const uv = new Float32Array(painted ? vertices * 2 : 0);
	const skin = new Uint16Array(painted ? vertices : 0);
	let value = 0;
	let corner = 0;
	for (const { part, matrix: m } of wanted) {
		const { positions: p, indices: order } = part;
		for (let i = 0; i < p.length; i += 3) {
			const [x, y, z] = [p[i], p[i + 1], p[i + 2]];
			positions[value + i] = m[0] * x + m[4] * y + m[8] * z + m[12];
			positions[value + i + 1] = m[1] * x + m[5] * y + m[9] * z + m[13];
			positions[value + i + 2] = m[2] * x + m[6] * y + m[10] * z + m[14];
		}
		// a mirroring transform turns triangles inside out
		const [second, third] = mirrors(m) ? [2, 1] : [1, 2];
		for (let k = 0; k < order.length; k += 3) {
			indices[corner + k] = order[k] + value / 3;
			indices[corner + k + 1] = order[k + second] + value / 3;
			indices[corner + k + 2] = order[k + third] + value / 3;
		}
		if (colours && part.colours) colours.set(part.colours, value);
		else if (colours) {
			for (let i = 0; i < p.length; i++) colours[value + i] = part.plain[i % 3];
		}
		if (part.uv) {
			uv.set(part.uv, (value / 3) * 2);
			skin.fill(part.skin, value / 3, (value + p.length) / 3);
		}
		value += p.length;
		corner += order.length;
	}
	return {
		positions,
		indices,
		...(colours ? { colours } : {}),
		...(painted ? { paint: { uv, skin, skins } } : {}),
		warnings,
	};
}

function mirrors(m: Matrix): boolean {
	return (
		m[0] * (m[5] * m[10] - m[6] * m[9]) -
			m[4] * (m[1] * m[10] - m[2] * m[9]) +
			m[8] * (m[1] * m[6] - m[2] * m[5]) <
		0
	);
}
