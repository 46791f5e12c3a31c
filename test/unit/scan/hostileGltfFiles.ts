import { MeshoptEncoder } from 'meshoptimizer';
import { ellipticCone } from '../mesh/shapes';
import { changed, utf16 } from './bytes';
import { dracoGlb, glb, glbOf, gltfDocument, meshoptGlb } from './gltfWriters';
import type { HostileFile } from './hostileFiles';
import { text } from './writers';

const cone = ellipticCone(4, 3, [1, 12, 0], 12, 6);
const small = { ...cone, positions: cone.positions.map((v) => v / 1000) };

/** A description of one triangle, and its data: three corners, then three numbers. */
function triangle(): { json: Record<string, unknown>; data: Uint8Array } {
	const data = new Uint8Array(48);
	const view = new DataView(data.buffer);
	[0, 0, 0, 0.01, 0, 0, 0, 0.01, 0].forEach((v, i) => view.setFloat32(i * 4, v, true));
	[0, 1, 2].forEach((v, i) => view.setUint32(36 + i * 4, v, true));
	return {
		json: {
			asset: { version: '2.0' },
			scene: 0,
			scenes: [{ nodes: [0] }],
			nodes: [{ mesh: 0 }],
			meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
			accessors: [
				{ bufferView: 0, componentType: 5126, count: 3, type: 'VEC3' },
				{ bufferView: 1, componentType: 5125, count: 3, type: 'SCALAR' },
			],
			bufferViews: [
				{ buffer: 0, byteLength: 36 },
				{ buffer: 0, byteOffset: 36, byteLength: 12 },
			],
			buffers: [{ byteLength: 48 }],
		},
		data,
	};
}

/** The triangle with one place of its description (`accessors.0.count`) changed. */
function withField(path: string, value: unknown): Uint8Array {
	const { json, data } = triangle();
	const steps = path.split('.');
	const last = steps.pop()!;
	let at = json as Record<string, unknown>;
	for (const step of steps) at = (at[step] ??= {}) as Record<string, unknown>;
	at[last] = value;
	return glbOf(json, data);
}

export async function hostileGltf(): Promise<HostileFile[]> {
	const good = await glb(gltfDocument([{ mesh: small }]));
	const jsonLength = new DataView(good.buffer, good.byteOffset).getUint32(12, true);
	const draco = await dracoGlb(small, 'edgebreaker');
	const packed = await meshoptGlb(small, true);
	const plain = triangle();
	const nested = (levels: number) =>
		Array.from({ length: levels }, (_, i) => (i + 1 < levels ? { children: [i + 1] } : { mesh: 0 }));
	const deep = `{"asset":{"version":"2.0"},"extras":${'['.repeat(200_000)}${']'.repeat(200_000)}}`;
	await MeshoptEncoder.ready;
	const zeros = MeshoptEncoder.encodeVertexBuffer(new Uint8Array(4096 * 16), 4096, 16);
	const bomb = (count: number, mode: string, stride: number) => ({
		...plain.json,
		bufferViews: [
			{
				buffer: 0,
				byteLength: 36,
				extensions: {
					EXT_meshopt_compression: { buffer: 0, byteLength: zeros.length, byteStride: stride, count, mode },
				},
			},
			{ buffer: 0, byteLength: 12 },
		],
		buffers: [{ byteLength: zeros.length }],
		accessors: [{ bufferView: 0, componentType: 5126, count: 3, type: 'VEC3' }],
		meshes: [{ primitives: [{ attributes: { POSITION: 0 } }] }],
	});
	/** the Draco file with other numbers of points and triangles in its head (variable-length integers) */
	const dracoBomb = (numbers: number[]): Uint8Array => {
		const copy = draco.slice();
		const at = Buffer.from(copy).indexOf('DRACO') + 12;
		copy.set([...numbers, ...numbers], at);
		return copy;
	};
	const glbFiles: [string, Uint8Array, HostileFile['code']][] = [
		['nothing at all', new Uint8Array(0), 'empty'],
		['four letters', text('glTF'), 'truncated'],
		['only a head', good.slice(0, 12), 'truncated'],
		['cut in the description', good.slice(0, 100), 'truncated'],
		['cut before the data', good.slice(0, 20 + jsonLength), 'truncated'],
		['cut in the data', good.slice(0, -10), 'truncated'],
		['version 1', changed(good, () => undefined).fill(1, 4, 5), 'unknown-format'],
		['wrong first letters', changed(good, () => undefined).fill(65, 0, 4), 'not-a-mesh'],
		[
			'a description longer than the file',
			changed(good, (v) => v.setUint32(12, 2 ** 31, true)),
			'count-lies',
		],
		[
			'data longer than the file',
			changed(good, (v) => v.setUint32(20 + jsonLength, 2 ** 32 - 1, true)),
			'count-lies',
		],
		['a shorter whole than it is', changed(good, (v) => v.setUint32(8, 200, true)), 'count-lies'],
		['no description', changed(good, (v) => v.setUint32(16, 0, true)), 'damaged'],
		['a description that is no JSON', glbOf('{"asset": {"version": "2.0"}, nodes}'), 'damaged'],
		['a description of something else', glbOf({ title: 'tooth' }), 'not-a-mesh'],
		['brackets 200,000 deep', glbOf(deep), 'nested-too-deep'],
		['2^31 corners announced', withField('accessors.0.count', 2 ** 31), 'too-large'],
		['a million corners announced', withField('accessors.0.count', 1e6), 'count-lies'],
		['a negative count', withField('accessors.0.count', -3), 'count-lies'],
		['a count of 1.5', withField('accessors.0.count', 1.5), 'count-lies'],
		['a count that is text', withField('accessors.0.count', '3'), 'count-lies'],
		['an offset past the end', withField('accessors.0.byteOffset', 1e12), 'count-lies'],
		['a view past the end', withField('bufferViews.1.byteLength', 1e9), 'count-lies'],
		['a stride of 0', withField('bufferViews.0.byteStride', 0), 'damaged'],
		['a view that does not exist', withField('accessors.0.bufferView', 7), 'damaged'],
		['views that are no list', withField('bufferViews', 'none'), 'damaged'],
		['a mesh that is null', withField('meshes.0', null), 'damaged'],
		['an unknown type of data', withField('accessors.0.componentType', 5130), 'damaged'],
		['corners of two numbers', withField('accessors.0.type', 'VEC2'), 'damaged'],
		['an unknown kind of surface', withField('meshes.0.primitives.0.mode', 9), 'damaged'],
		['lines only', withField('meshes.0.primitives.0.mode', 1), 'no-triangles'],
		['no scene content', withField('scenes.0.nodes', []), 'no-triangles'],
		['two corners for a triangle', withField('accessors.1.count', 2), 'count-lies'],
		['a matrix of text', withField('nodes.0.matrix', Array(16).fill('1')), 'damaged'],
		['a matrix of huge numbers', withField('nodes.0.scale', [1e300, 1e300, 1e300]), 'not-a-number'],
		['a flattening scale', withField('nodes.0.scale', [0, 1, 0]), 'no-area'],
		['a node that contains itself', withField('nodes.0.children', [0]), 'nested-too-deep'],
		[
			'two nodes that contain each other',
			withField('nodes', [{ children: [1] }, { children: [0] }]),
			'nested-too-deep',
		],
		['nodes 100,000 deep', withField('nodes', nested(100_000)), 'nested-too-deep'],
		['nodes 200 deep', withField('nodes', nested(200)), 'fine'],
		[
			'nodes that double at each of 40 levels',
			withField(
				'nodes',
				Array.from({ length: 40 }, (_, i) => ({ mesh: 0, children: i < 39 ? [i + 1, i + 1] : [] })),
			),
			'nested-too-deep',
		],
		[
			'a sparse place past the end',
			withField('accessors.0.sparse', {
				count: 1,
				indices: { bufferView: 0, byteOffset: 12, componentType: 5125 },
				values: { bufferView: 0 },
			}),
			'index-out-of-range',
		],
		[
			'a sparse count past the end',
			withField('accessors.0.sparse', {
				count: 1e9,
				indices: { bufferView: 1, componentType: 5125 },
				values: { bufferView: 0 },
			}),
			'count-lies',
		],
		[
			'six million corners out of nothing',
			withField('accessors.0', { componentType: 5126, count: 6e6, type: 'VEC3' }),
			'no-area',
		],
		[
			'an index past the end',
			changed(glbOf(plain.json, plain.data), (v) => v.setUint32(v.byteLength - 4, 3, true)),
			'index-out-of-range',
		],
		[
			'a corner that is NaN',
			changed(glbOf(plain.json, plain.data), (v) => v.setFloat32(v.byteLength - 48, NaN, true)),
			'not-a-number',
		],
		[
			'a picture of 65,535 by 65,535 points',
			withField('images', [{ uri: 'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAA//8AAP//CAYAAAA=' }]),
			'fine',
		],
		['a picture that is not there', withField('images', [{ uri: 'gone.png' }]), 'fine'],
		['data in a file elsewhere', withField('buffers.0.uri', '../../secret.bin'), 'external-file-missing'],
		['data on the network', withField('buffers.0.uri', 'https://localhost/a.bin'), 'external-file-missing'],
		['data in a file that is not there', withField('buffers.0.uri', 'tooth.bin'), 'external-file-missing'],
		[
			'an unknown packing',
			withField('extensionsRequired', ['EXT_other_compression']),
			'compressed-unreadable',
		],
		['an unknown feature', withField('extensionsRequired', ['EXT_mesh_gpu_instancing']), 'feature-unknown'],
		['an unknown material', withField('extensionsRequired', ['KHR_materials_anything']), 'fine'],
		['Draco with 2^28 triangles', dracoBomb([0xff, 0xff, 0xff, 0x7f]), 'too-large'],
		['Draco with 5,000,000 triangles in 1,000 bytes', dracoBomb([0xc0, 0x96, 0xb1, 0x02]), 'count-lies'],
		[
			'Draco cut short',
			changed(draco, (v) => {
				for (let i = v.byteLength - 60; i < v.byteLength; i++) v.setUint8(i, 255);
			}),
			'compressed-unreadable',
		],
		[
			'Draco that is something else',
			changed(draco, (v) => v.setUint8(Buffer.from(draco).indexOf('DRACO'), 0)),
			'compressed-unreadable',
		],
		[
			'packed data overwritten',
			changed(packed, (v) => {
				for (let i = v.byteLength - 200; i < v.byteLength; i++) v.setUint8(i, 0xff);
			}),
			'compressed-unreadable',
		],
		['16 GB of corners in a few bytes', glbOf(bomb(1e9, 'ATTRIBUTES', 16), zeros), 'count-lies'],
		['a million indices in a few bytes', glbOf(bomb(3e6, 'INDICES', 4), zeros), 'count-lies'],
		['an unknown mode of packing', glbOf(bomb(100, 'ZIP', 16), zeros), 'compressed-unreadable'],
	];
	const gltfFiles: [string, Uint8Array, HostileFile['code']][] = [
		['text cut in the middle', text(JSON.stringify(plain.json).slice(0, 200)), 'truncated'],
		['glTF version 1', text(JSON.stringify({ asset: { version: '1.0' } })), 'unknown-format'],
		[
			'data as bad base64',
			text(JSON.stringify({ ...plain.json, buffers: [{ byteLength: 48, uri: 'data:;base64,@@@@' }] })),
			'damaged',
		],
		[
			'data shorter than announced',
			text(JSON.stringify({ ...plain.json, buffers: [{ byteLength: 48, uri: 'data:;base64,AAAA' }] })),
			'truncated',
		],
		['data missing', text(JSON.stringify(plain.json)), 'truncated'],
		['a GLB under this name', good, 'not-a-mesh'],
		[
			'UTF-16',
			utf16(
				JSON.stringify({
					...plain.json,
					buffers: [{ byteLength: 48, uri: `data:;base64,${Buffer.from(plain.data).toString('base64')}` }],
				}),
			),
			'fine',
		],
	];
	return [
		...glbFiles.map(([what, bytes, code]) => ({ what, bytes, code, file: 'a.glb' })),
		...gltfFiles.map(([what, bytes, code]) => ({ what, bytes, code, file: 'a.gltf' })),
	];
}
