import { getCounts } from './getCounts';

/** In which store the counts are kept, for whoever looks after the server. */
export function countsState(): 'sqlite' | 'postgresql' | 'postgresql away' | 'none' {
	const counts = getCounts();
	if (!counts) return 'none';
	return counts.kind === 'postgresql' && counts.away ? 'postgresql away' : counts.kind;
}
