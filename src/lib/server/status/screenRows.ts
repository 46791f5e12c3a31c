import type { Exhibit } from '../../content/exhibit';
import type { ScreenRow } from '../../content/screens/statusView';
import type { ScreenReport } from '../screens/screenRegistry';

/**
 * A row for every screen that has beaten or is in screens.yaml, what needs somebody first. `version` is the program's,
 * `hash` the exhibit's: a screen that shows another one is told of.
 */
export function screenRows(
	exhibit: Pick<Exhibit, 'screens' | 'hash'> | null,
	reports: readonly ScreenReport[],
	version: string,
): ScreenRow[] {
	const settings = exhibit?.screens ?? [];
	const seen = reports.map((report): ScreenRow => {
		const { key, name, health, age_s, beat } = report;
		const set = settings.find(({ id }) => id === name);
		return {
			key,
			name,
			title: set?.title ?? null,
			unknown: name !== null && !set,
			health,
			age_s,
			reachable: report.reachable,
			restarting: report.restarting,
			hangs: report.hangs,
			twice: report.twice,
			otherContent: exhibit !== null && beat.exhibit !== null && beat.exhibit !== exhibit.hash,
			otherVersion: beat.version !== version,
			beat,
		};
	});
	const missing = settings
		.filter(({ id }) => !reports.some(({ name }) => name === id))
		.map(({ id, title }): ScreenRow => ({
			key: id,
			name: id,
			title,
			unknown: false,
			health: 'never',
			age_s: null,
			reachable: false,
			restarting: false,
			hangs: 0,
			twice: false,
			otherContent: false,
			otherVersion: false,
			beat: null,
		}));
	const URGENT = ['hung', 'late', 'well', 'closed', 'never'];
	const rank = ({ health, unknown }: ScreenRow) => URGENT.indexOf(health) - (unknown ? 0.5 : 0);
	return [...seen, ...missing].sort((a, b) => rank(a) - rank(b) || (a.key < b.key ? -1 : 1));
}
