import { gltfAccessor } from './gltfAccessor';
import { beside, Budget, withinText, type Sibling, type ViewBytes } from './gltfBuffers';
import { entry, extension, fields, list, type Fields, type Gltf } from './gltfTypes';
import type { Picture, Skin, Wrap } from './paint';
import type { ScanWarning } from './rawMesh';

/** Opens a picture's bytes; throws an Error whose message says why it cannot, as the end of a sentence. */
export type OpenPicture = (bytes: Uint8Array) => Promise<Picture>;

/** How a primitive's material colours it. */
export interface Look {
	/** linear light: red, green, blue */
	factor: readonly number[];
	/** number of its picture + 1; 0 for none */
	skin: number;
	/** name of the attribute that says where on the picture each corner lies */
	uvName: string | null;
	/** places on the picture as the material moves and turns them */
	turn(places: Float32Array): Float32Array;
}

export interface GltfSkins {
	/** in the order of their numbers */
	skins: Skin[];
	warnings: ScanWarning[];
	lookOf(primitive: Fields): Promise<Look>;
	/** where each corner lies on the picture; null where that cannot be read */
	places(primitive: Fields, look: Look): Promise<Float32Array | null>;
}

/** More pictures than this are left out. */
const MOST_SKINS = 16;
const WRAPS: Readonly<Record<number, Wrap>> = { 10497: 'repeat', 33648: 'mirror', 33071: 'clamp' };
const PLAIN: Look = { factor: [1, 1, 1], skin: 0, uvName: null, turn: (places) => places };

/**
 * The base colours of a glTF's materials: factor and picture (glTF 2.0 specification, 3.9.2; KHR_texture_transform;
 * EXT_texture_webp; KHR_materials_pbrSpecularGlossiness, which older programs write). Whatever is wrong with them
 * costs the colour only, and is said in a warning.
 */
export function gltfSkins(
	json: Gltf,
	view: ViewBytes,
	openPicture: OpenPicture | undefined,
	sibling: Sibling | undefined,
): GltfSkins {
	const skins: Skin[] = [];
	const warnings: ScanWarning[] = [];
	const numberOf = new Map<unknown, number>();
	const budget = new Budget();

	function warn(cause: unknown): void {
		if (warnings.length > 0) return; // one is enough
		const why = cause instanceof Error ? cause.message : String(cause);
		warnings.push({
			code: 'colour-unreadable',
			message: `The picture that colours its surface cannot be used: ${why.replace(/\.$/, '').replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase())}.`,
		});
	}

	async function bytesOf(image: Fields): Promise<Uint8Array> {
		if (image.bufferView !== undefined) return (await view(image.bufferView)).bytes;
		if (typeof image.uri !== 'string') throw new Error('it is not there');
		return image.uri.startsWith('data:') ? withinText(image.uri) : beside(image.uri, sibling);
	}

	/** Opens a texture's picture once; 0 where it cannot be. */
	async function skinOf(index: unknown): Promise<number> {
		const known = numberOf.get(index);
		if (known !== undefined || !openPicture) return known ?? 0;
		numberOf.set(index, 0);
		try {
			const texture = entry(list(json.textures, 'textures'), index, 'texture');
			const source = extension(texture, 'EXT_texture_webp')?.source ?? texture.source;
			if (source === undefined) throw new Error('it is packed in a way that is not known');
			if (skins.length >= MOST_SKINS) throw new Error(`there are more than ${MOST_SKINS}`);
			const picture = await openPicture(await bytesOf(entry(list(json.images, 'images'), source, 'image')));
			const samplers = list(json.samplers, 'samplers');
			const sampler = texture.sampler === undefined ? {} : entry(samplers, texture.sampler, 'sampler');
			const wrap = (value: unknown): Wrap => WRAPS[value as number] ?? 'repeat';
			skins.push({ ...picture, wrap: [wrap(sampler.wrapS), wrap(sampler.wrapT)] });
			numberOf.set(index, skins.length);
		} catch (cause) {
			warn(cause);
		}
		return numberOf.get(index) ?? 0;
	}

	async function lookOf(primitive: Fields): Promise<Look> {
		if (primitive.material === undefined) return PLAIN;
		try {
			const material = entry(list(json.materials, 'materials'), primitive.material, 'material');
			const older = extension(material, 'KHR_materials_pbrSpecularGlossiness');
			const pbr = fields(material.pbrMetallicRoughness) ?? {};
			const texture = fields(older?.diffuseTexture ?? pbr.baseColorTexture);
			const factor = factorOf(older ? older.diffuseFactor : pbr.baseColorFactor);
			if (!texture) return { ...PLAIN, factor };
			const moved = extension(texture, 'KHR_texture_transform');
			const uvName = `TEXCOORD_${Number(moved?.texCoord ?? texture.texCoord ?? 0)}`;
			const skin = fields(primitive.attributes)?.[uvName] === undefined ? 0 : await skinOf(texture.index);
			return { factor, skin, uvName: skin > 0 ? uvName : null, turn: turning(moved) };
		} catch (cause) {
			warn(cause);
			return PLAIN;
		}
	}

	return {
		skins,
		warnings,
		lookOf,
		async places(primitive, { uvName }) {
			if (uvName === null) return null;
			try {
				const index = fields(primitive.attributes)?.[uvName];
				const { values, width } = await gltfAccessor(json, index, view, budget, 'values');
				if (width !== 2) throw new Error('its places are not written in two numbers each');
				return values as Float32Array;
			} catch (cause) {
				warn(cause);
				return null;
			}
		},
	};
}

function factorOf(value: unknown): readonly number[] {
	const found = Array.isArray(value) ? (value as unknown[]).slice(0, 3) : [];
	return [0, 1, 2].map((k) => {
		const share = found[k];
		return typeof share === 'number' && share >= 0 && share <= 1 ? share : 1;
	});
}

/** KHR_texture_transform: scaled, then turned (counter-clockwise on screen, where v runs down), then moved. */
function turning(moved: Fields | null): Look['turn'] {
	if (!moved) return PLAIN.turn;
	const two = (value: unknown, fallback: number): [number, number] => {
		const at = (k: number): number => {
			const found = Array.isArray(value) ? (value as unknown[])[k] : undefined;
			return typeof found === 'number' && Number.isFinite(found) ? found : fallback;
		};
		return [at(0), at(1)];
	};
	const [su, sv] = two(moved.scale, 1);
	const [ou, ov] = two(moved.offset, 0);
	const angle = typeof moved.rotation === 'number' && Number.isFinite(moved.rotation) ? moved.rotation : 0;
	const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
	return (places) => {
		const out = new Float32Array(places.length);
		for (let i = 0; i < places.length; i += 2) {
			const [u, v] = [places[i] * su, places[i + 1] * sv];
			// the specification's matrices: translation * rotation * scale, rotation = [cos sin; -sin cos]
			out[i] = cos * u + sin * v + ou;
			out[i + 1] = -sin * u + cos * v + ov;
		}
		return out;
	};
}
