export interface FingersDown {
	count: () => number;
	/** since the last one was lifted, ms; Infinity where none ever was */
	sinceLifted_ms: () => number;
	stop: () => void;
}

/** Counts the fingers on the glass, whoever else hears of them. */
export function fingersDown(target: Window, now: () => number): FingersDown {
	const down = new Set<number>();
	let lifted_ms = -Infinity;
	const press = (event: PointerEvent) => void down.add(event.pointerId);
	const lift = (event: PointerEvent) => {
		if (down.delete(event.pointerId)) lifted_ms = now();
	};
	// a window that loses its focus hears of no finger that is lifted
	const forget = () => down.clear();
	target.addEventListener('pointerdown', press, { capture: true });
	target.addEventListener('pointerup', lift, { capture: true });
	target.addEventListener('pointercancel', lift, { capture: true });
	target.addEventListener('blur', forget);
	return {
		count: () => down.size,
		sinceLifted_ms: () => now() - lifted_ms,
		stop() {
			target.removeEventListener('pointerdown', press, { capture: true });
			target.removeEventListener('pointerup', lift, { capture: true });
			target.removeEventListener('pointercancel', lift, { capture: true });
			target.removeEventListener('blur', forget);
		},
	};
}
