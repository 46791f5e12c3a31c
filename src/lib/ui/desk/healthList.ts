import type { SpecimenHealth } from '../../content/specimenHealth';

export const HEALTH_FILTERS = ['all', 'problems', 'hidden', 'marks', 'silent'] as const;
/** hidden: visitors do not see it as its files are now; marks: its crown waits for marks; silent: some label has no recording */
export type HealthFilter = (typeof HEALTH_FILTERS)[number] | `lang-${string}`;

export const HEALTH_SORTS = ['order', 'number', 'title', 'problems', 'size'] as const;
export type HealthSort = (typeof HEALTH_SORTS)[number];

/** Whether a specimen is one of those that a filter asks for; `lang-fr`: its French is not whole. */
export function isOf(filter: HealthFilter, health: SpecimenHealth): boolean {
	switch (filter) {
		case 'all':
			return true;
		case 'problems':
			return health.errors + health.warnings > 0;
		case 'hidden':
			return health.state !== 'shown' && health.state !== 'until';
		case 'marks':
			return health.shape === 'unmarked';
		case 'silent':
			return health.languages.some(({ sound }) => !sound);
		default:
			return health.languages.some(({ code, words }) => `lang-${code}` === filter && words !== 'whole');
	}
}

/** The specimens that are asked for, in the order asked for; `search` looks in number, title and folder, without accents. */
export function healthList(
	all: readonly SpecimenHealth[],
	{ filter, sort, search, lang }: { filter: HealthFilter; sort: HealthSort; search: string; lang: string },
): SpecimenHealth[] {
	const wanted = plain(search).split(/\s+/).filter(Boolean);
	const found = all.filter((health) => {
		const text = plain(`${health.accession} ${health.title} ${health.id}`);
		return isOf(filter, health) && wanted.every((word) => text.includes(word));
	});
	const words = new Intl.Collator(lang, { numeric: true });
	const number = (a: SpecimenHealth, b: SpecimenHealth) =>
		words.compare(a.accession || a.id, b.accession || b.id);
	switch (sort) {
		case 'order':
			return found;
		case 'number':
			return found.sort(number);
		case 'title':
			return found.sort((a, b) => words.compare(a.title || a.id, b.title || b.id));
		case 'problems':
			return found.sort((a, b) => b.errors - a.errors || b.warnings - a.warnings || number(a, b));
		case 'size':
			return found.sort((a, b) => (b.triangles ?? 0) - (a.triangles ?? 0) || number(a, b));
	}
}

const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
