import type { ExhibitStore } from './exhibitStore';
import type { PreparingState } from './preparingState';

export interface Health {
	/** there is an exhibit to show */
	ok: boolean;
	/** hash of the exhibit on screen */
	exhibit: string | null;
	specimens: number;
	problems: { errors: number; warnings: number };
	/** shapes being worked out: how many of how many are done, what is at work, how long it may take */
	preparing: PreparingState;
	uptime_s: number;
}

/** The state of the server in numbers. */
export function healthOf(
	store: Pick<ExhibitStore, 'current' | 'problems' | 'preparing'>,
	uptime_s: number,
): Health {
	const exhibit = store.current();
	const problems = store.problems();
	const errors = problems.filter((problem) => problem.severity === 'error').length;
	return {
		ok: exhibit !== null,
		exhibit: exhibit?.hash ?? null,
		specimens: exhibit?.specimens.length ?? 0,
		problems: { errors, warnings: problems.length - errors },
		preparing: store.preparing(),
		uptime_s: Math.round(uptime_s),
	};
}
