import type { LineDrawing } from '../../domain/mesh/lineDrawing';
import { placed } from '../../kiosk/placed';

const KEEP = 24;
const asked = new Map<string, Promise<LineDrawing | null>>();

/** The measured drawing at an address, asked for once; null when it does not come. Addresses change with their content. */
export function fetchDrawing(url: string): Promise<LineDrawing | null> {
	let answer = asked.get(url);
	if (!answer) {
		answer = fetch(placed(url))
			.then((found) => (found.ok ? (found.json() as Promise<LineDrawing>) : null))
			.catch(() => null);
		asked.set(url, answer);
		// asked for again where it did not come
		void answer.then((drawing) => drawing ?? asked.delete(url));
		for (const old of asked.keys()) {
			if (asked.size <= KEEP) break;
			asked.delete(old);
		}
	}
	return answer;
}
