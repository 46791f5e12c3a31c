import { cssPxPerMm, readScreenScale, type ScreenScale, type ScreenSeen } from './screenScale';

const KEY = 'tooth-table-screen';

/** What the browser says of the screen now. */
export const screenSeen = (): ScreenSeen => ({
	width: screen.width,
	height: screen.height,
	ratio: window.devicePixelRatio || 1,
});

/** The scale of this screen, as staff told it; kept by this browser alone. */
export class LifeSize {
	/** CSS px per mm; null while nobody has told it for this screen */
	pxPerMm = $state<number | null>(null);

	/** Reads what is kept; call it in the browser, and again when the window changes (zoom, another screen). */
	look(): void {
		const scale = readScreenScale(kept());
		this.pxPerMm = scale && cssPxPerMm(scale, screenSeen());
	}

	/** Keeps a scale; false where the browser keeps nothing. */
	keep(scale: ScreenScale): boolean {
		try {
			localStorage.setItem(KEY, JSON.stringify(scale));
		} catch {
			return false;
		}
		this.look();
		return true;
	}

	forget(): void {
		try {
			localStorage.removeItem(KEY);
		} catch {
			// nothing was kept
		}
		this.look();
	}
}

function kept(): string | null {
	try {
		return localStorage.getItem(KEY);
	} catch {
		return null;
	}
}
