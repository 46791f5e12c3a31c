import type { SpecimenView } from '../content/view';

/** Said by a room that is shown at the desk, when it can take what is typed there. */
export const PREVIEW_READY = 'tooth-table-preview-ready';
/** Said by the desk: one specimen as it would be. */
export const PREVIEW_SHOW = 'tooth-table-preview-show';

export interface PreviewMessage {
	kind: typeof PREVIEW_SHOW;
	/** null: as the exhibit has it */
	view: SpecimenView | null;
}

/** What the room needs of a window that holds it, or of the one that it is. */
interface Framed {
	parent: { postMessage(message: unknown, origin: string): void };
	location: { origin: string };
	addEventListener(name: 'message', listener: (event: MessageEvent) => void): void;
	removeEventListener(name: 'message', listener: (event: MessageEvent) => void): void;
}

/** A room in a frame of the desk: one specimen is shown with words that are not saved yet. */
export class Preview {
	#view = $state.raw<SpecimenView | null>(null);

	/** The room's specimens with the one that is being written; where it is not among them it comes first. */
	over(specimens: SpecimenView[]): SpecimenView[] {
		const view = this.#view;
		if (!view) return specimens;
		return specimens.some(({ id }) => id === view.id)
			? specimens.map((one) => (one.id === view.id ? view : one))
			: [view, ...specimens];
	}

	/** Takes what the desk sends, and nothing from anywhere else. Returns how to stop. */
	listen(frame: Framed): () => void {
		if (frame.parent === (frame as unknown)) return () => undefined;
		const { origin } = frame.location;
		const onmessage = ({ origin: from, source, data }: MessageEvent) => {
			const message = data as Partial<PreviewMessage> | null;
			if (from !== origin || source !== (frame.parent as unknown) || message?.kind !== PREVIEW_SHOW) return;
			this.#view = message.view ?? null;
		};
		frame.addEventListener('message', onmessage);
		frame.parent.postMessage({ kind: PREVIEW_READY }, origin);
		return () => frame.removeEventListener('message', onmessage);
	}
}
