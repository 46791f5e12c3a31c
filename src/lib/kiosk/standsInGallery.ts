/** Pages for staff and contributors: nobody is asked there whether they are still there. */
const STAFF = /^\/(desk|status|styleguide)(\/|$)/;
/** Screens that stand in a gallery are larger; a phone in a hand is one visitor's own. */
const SMALLEST_px = 600;
/** `?screen=own`: this is somebody's own device. Any other name: this is the gallery's screen of that name. */
const OWN = 'own';

export interface Standing {
	path: string;
	/** what `?screen=` said on this page or an earlier one of the visit; null for nothing */
	screen: string | null;
	/** of this page, as `https://teeth.example` */
	origin: string;
	/** where the exhibit stands on the public web, from exhibit.yaml; null for nowhere */
	publicAddress: string | null;
	/** of the device's screen, CSS px */
	shorterSide_px: number;
	/** in a frame of another page, which only the desk makes */
	framed: boolean;
}

/**
 * Whether this page is shared by one visitor after another. In doubt it is: a gallery's screen that nobody set up keeps
 * the last visitor's language all day, while somebody at home is only asked once in a while whether they are there.
 */
export function standsInGallery({
	path,
	screen,
	origin,
	publicAddress,
	shorterSide_px,
	framed,
}: Standing): boolean {
	if (framed || STAFF.test(path)) return false;
	if (screen !== null) return screen !== OWN;
	if (shorterSide_px < SMALLEST_px) return false;
	return publicAddress === null || originOf(publicAddress) !== origin;
}

function originOf(address: string): string | null {
	try {
		return new URL(address).origin;
	} catch {
		return null;
	}
}
