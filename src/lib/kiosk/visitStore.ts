/** The screen's own name stays when a visit ends. */
export const SCREEN_KEY = 'tooth-table-screen';

/** When this screen last began anew by itself, ms: it stays too. */
export const RENEWED_KEY = 'tooth-table-renewed';

type Kept = Pick<Storage, 'length' | 'key' | 'getItem' | 'setItem' | 'removeItem'>;

/** Everything that was kept for one visit goes, whoever kept it; what the screen keeps for itself stays. */
export function forgetVisit(store: Kept | null): void {
	try {
		if (!store) return;
		const keys = Array.from({ length: store.length }, (_, i) => store.key(i));
		for (const key of keys)
			if (key !== null && key !== SCREEN_KEY && key !== RENEWED_KEY) store.removeItem(key);
	} catch {
		// a forbidden store has kept nothing
	}
}

/** The screen's name: as this address says, else as an earlier one of this tab said; null for none. */
export function screenName(asked: string | null, store: Kept | null): string | null {
	try {
		if (asked !== null && asked !== '') store?.setItem(SCREEN_KEY, asked);
		return asked || (store?.getItem(SCREEN_KEY) ?? null);
	} catch {
		return asked || null;
	}
}
