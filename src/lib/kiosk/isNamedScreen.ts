import { OWN } from './standsInGallery';
import { screenName } from './visitStore';

/** Whether this tab is a gallery's screen by its own name: `?screen=NAME`, now or earlier. In doubt it is a desk's. */
export function isNamedScreen(asked: string | null): boolean {
	let store: Storage | null = null;
	try {
		store = typeof sessionStorage === 'undefined' ? null : sessionStorage;
	} catch {
		// forbidden
	}
	const name = screenName(asked, store);
	return name !== null && name !== OWN;
}
