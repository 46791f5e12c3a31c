import type { Mesh } from 'three';
import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import type { RawTriangles } from './readScan';
import { fromGeometry } from './fromGeometry';

/** Reads OBJ, all its objects together; lines and points are left out. Throws for a damaged file. */
export function readObj(bytes: Uint8Array): RawTriangles {
	const parts: Float32Array[] = [];
	new OBJLoader().parse(new TextDecoder().decode(bytes)).traverse((object) => {
		const mesh = object as Mesh;
		if (mesh.isMesh) parts.push(fromGeometry(mesh.geometry).positions);
	});
	const positions = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
	let at = 0;
	for (const part of parts) {
		positions.set(part, at);
		at += part.length;
	}
	return { positions, indices: null };
}
