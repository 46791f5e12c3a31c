/**
 * What a page without any care for slow computers would do: the same two full-detail teeth, physically
 * based material, antialiasing, a frame all the time. Written against three.js's own manual.
 */
export const NAIVE_PAGE = (urls: string[]) => `<!doctype html>
<html><head><style>html,body{margin:0;background:#15100c}canvas{display:block}</style>
<script type="importmap">{"imports":{"three":"/naive-modules/build/three.module.js","three/addons/":"/naive-modules/examples/jsm/"}}</script>
</head><body><script type="module">
import * as THREE from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { MeshoptDecoder } from 'three/addons/libs/meshopt_decoder.module.js';
const renderer = new THREE.WebGLRenderer({ antialias: true });
renderer.setSize(innerWidth, innerHeight);
document.body.append(renderer.domElement);
const scene = new THREE.Scene();
scene.add(new THREE.HemisphereLight(0xffffff, 0x443322, 1));
const lamp = new THREE.DirectionalLight(0xffffff, 3);
lamp.position.set(-1, 2, 2);
scene.add(lamp);
const camera = new THREE.PerspectiveCamera(30, innerWidth / innerHeight, 0.01, 10);
const loader = new GLTFLoader().setMeshoptDecoder(MeshoptDecoder);
const turned = new THREE.Group();
scene.add(turned);
let place = -1;
for (const url of ${JSON.stringify(urls)}) {
	const { scene: tooth } = await loader.loadAsync(url);
	const full = tooth.getObjectByName('level-0');
	full.traverse((part) => { if (part.isMesh) part.material = new THREE.MeshStandardMaterial({ color: 0xc89b5a, roughness: 0.4 }); });
	const box = new THREE.Box3().setFromObject(full);
	const holder = new THREE.Group();
	holder.add(full);
	full.position.sub(box.getCenter(new THREE.Vector3()));
	holder.scale.setScalar(1 / box.getSize(new THREE.Vector3()).length());
	holder.position.x = place * 0.5;
	place += 2;
	turned.add(holder);
}
camera.position.z = 2.2;
addEventListener('pointermove', (event) => { if (event.buttons) turned.children.forEach((child) => (child.rotation.y = event.clientX / 100)); });
renderer.setAnimationLoop(() => renderer.render(scene, camera));
document.body.dataset.loaded = 'yes';
</script></body></html>`;
