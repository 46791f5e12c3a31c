/** Makes a tooth's surface away from the page. */
import type { TriMesh } from '../domain/mesh/triMesh';
import type { ToothForm } from '../domain/tooth/form';
import { sculpt } from '../domain/tooth/sculpt';

export interface SculptAsk {
	id: number;
	form: ToothForm;
}
export interface SculptAnswer {
	id: number;
	/** null when the form cannot be made */
	answer: TriMesh | null;
}

self.addEventListener('message', ({ data }: MessageEvent<SculptAsk>) => {
	const made = sculpt(data.form);
	const reply: SculptAnswer = { id: data.id, answer: made.ok ? made.value.mesh : null };
	self.postMessage(reply);
});
