/** Wears one tooth by another away from the page. */
import type { TriMesh } from '../domain/mesh/triMesh';
import type { BiteSetup } from '../domain/replacement/bite';
import type { MeasuredFacet } from '../domain/replacement/measureFacets';
import { wearTooth } from '../domain/replacement/wearTooth';
import type { ToothForm } from '../domain/tooth/form';
import { sculpt } from '../domain/tooth/sculpt';

export interface WearAsk {
	id: number;
	tooth: ToothForm;
	opposing: ToothForm;
	setup: BiteSetup;
	/** 0 = unworn .. 1 = worn to a stump */
	progress: number;
	stumpShare: number;
}
export interface WearResult {
	mesh: TriMesh;
	/** the same object's content every time for the same form */
	opposing: TriMesh;
	touches: boolean;
	/** largest first */
	facets: MeasuredFacet[];
	crownLeft: number;
}
export interface WearAnswer {
	id: number;
	/** null when one of the teeth cannot be made */
	answer: WearResult | null;
}

const made = new Map<string, TriMesh | null>();
function toothOf(form: ToothForm): TriMesh | null {
	const key = JSON.stringify(form);
	let mesh = made.get(key);
	if (mesh === undefined) {
		const result = sculpt(form);
		mesh = result.ok ? result.value.mesh : null;
		made.set(key, mesh);
	}
	return mesh;
}

self.addEventListener('message', ({ data }: MessageEvent<WearAsk>) => {
	const tooth = toothOf(data.tooth);
	const opposing = toothOf(data.opposing);
	let answer: WearResult | null = null;
	if (tooth && opposing) {
		const { stumpShare } = data;
		const worn = wearTooth(tooth, opposing, data.setup, data.progress, { stumpShare });
		const { mesh, touches, facets, crownLeft } = worn;
		answer = { mesh, opposing, touches, facets, crownLeft };
	}
	const reply: WearAnswer = { id: data.id, answer };
	self.postMessage(reply);
});
