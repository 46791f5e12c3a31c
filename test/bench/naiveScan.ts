/**
 * In a process of its own: what a page would do with the same scan without any preparing: three's STLLoader, one
 * normal a corner, and light by rays from each corner against every triangle. The rays are cast from a few corners
 * only and their time is multiplied: all of them would take days.
 */
import { readFileSync } from 'node:fs';
import { DoubleSide, Mesh, MeshBasicMaterial, Raycaster, Vector3 } from 'three';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';

/** Rays from a corner in the naive light, as few as still show hollows. */
const RAYS = 16;
const SAMPLE = 12;

const bytes = readFileSync(process.argv[2]);
const begun = performance.now();
const geometry = new STLLoader().parse(
	bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer,
);
geometry.computeVertexNormals();
const read_ms = performance.now() - begun;

const mesh = new Mesh(geometry, new MeshBasicMaterial({ side: DoubleSide }));
const caster = new Raycaster();
const corners = geometry.getAttribute('position').count;
const from = new Vector3();
const along = new Vector3();
const castBegun = performance.now();
for (let i = 0; i < SAMPLE; i++) {
	const corner = Math.floor(((i + 0.5) * corners) / SAMPLE);
	from.fromBufferAttribute(geometry.getAttribute('position'), corner);
	along.fromBufferAttribute(geometry.getAttribute('normal'), corner).normalize();
	caster.set(from.addScaledVector(along, 0.01), along);
	caster.intersectObject(mesh, false);
}
const ray_ms = (performance.now() - castBegun) / SAMPLE;
console.log(
	JSON.stringify({
		read_ms,
		ray_ms,
		// the corners of a closed surface are half as many as its triangles; a loader's are three times as many
		light_ms: (ray_ms * RAYS * corners) / 6,
		peak_bytes: process.resourceUsage().maxRSS * 1024,
	}),
);
