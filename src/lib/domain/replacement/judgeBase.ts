/** What can be seen at the lower end and the tip of a tooth that was found. `unclear` = worn off, hidden or not looked at. */
export interface BaseSigns {
	root: 'none' | 'stub' | 'full' | 'unclear';
	base: 'bays' | 'clean-break' | 'whole' | 'thin-rim' | 'unclear';
	tip: 'worn' | 'unworn' | 'unclear';
}

export const VERDICTS = ['shed', 'torn-out', 'broken-crown', 'germ', 'cannot-tell'] as const;
/**
 * shed = lost in life, its root resorbed; torn-out = came out with its root, mostly after death; broken-crown =
 * snapped off above the root; germ = never came through.
 */
export type Verdict = (typeof VERDICTS)[number];

export const REASONS = [
	'bays-in-base', // hollows eaten by cells that take the root away: the one sign that decides for shed
	'no-bays', // without them a missing root is only a broken crown
	'root-missing',
	'root-stub',
	'root-full',
	'base-whole',
	'base-broken',
	'rim-thin', // thin, even, sharp rim and a wide open pulp
	'tip-worn', // it was used
	'tip-unworn',
	'signs-disagree',
] as const;
export type ReasonId = (typeof REASONS)[number];

export interface Reason {
	id: ReasonId;
	/** whether it speaks for the verdict, against it, or leaves it open */
	speaks: 'for' | 'against' | 'open';
}

export interface BaseVerdict {
	verdict: Verdict;
	/** likely = the deciding sign is there but another speaks against it or is missing */
	certainty: 'clear' | 'likely' | 'open';
	reasons: Reason[];
}

/**
 * Shed in life, or lost otherwise? Basis: roots nearly gone before teeth fall in Yinlong (Hu and others 2022,
 * doi:10.7554/eLife.76676) and Jeholosaurus (Hu and others 2024, doi:10.1186/s12862-024-02233-2). That a base of bays
 * tells a shed tooth and a fracture a broken one is common practice, no source.
 */
export function judgeBase({ root, base, tip }: BaseSigns): BaseVerdict {
	const reasons: Reason[] = [];
	const say = (id: ReasonId, speaks: Reason['speaks']): void => void reasons.push({ id, speaks });
	const verdict = (name: Verdict, certainty: BaseVerdict['certainty']): BaseVerdict => ({
		verdict: name,
		certainty,
		reasons,
	});
	if (base === 'bays') {
		say('bays-in-base', 'for');
		if (root === 'full') {
			// being resorbed, but not yet fallen by itself
			say('root-full', 'against');
			say('signs-disagree', 'open');
			return verdict('cannot-tell', 'open');
		}
		if (root === 'stub') say('root-stub', 'for');
		if (root === 'none') say('root-missing', 'for');
		if (tip === 'worn') say('tip-worn', 'for');
		if (tip === 'unworn') say('tip-unworn', 'against');
		return verdict('shed', root === 'unclear' || tip === 'unworn' ? 'likely' : 'clear');
	}
	if (base === 'thin-rim') {
		say('rim-thin', 'for');
		if (tip === 'worn') {
			say('tip-worn', 'against');
			say('signs-disagree', 'open');
			return verdict('cannot-tell', 'open');
		}
		if (root === 'full') {
			say('root-full', 'against');
			say('signs-disagree', 'open');
			return verdict('cannot-tell', 'open');
		}
		if (tip === 'unworn') say('tip-unworn', 'for');
		return verdict('germ', tip === 'unworn' ? 'clear' : 'likely');
	}
	if (root === 'full') {
		say('root-full', 'for');
		if (base === 'whole') say('base-whole', 'for');
		if (base === 'clean-break') say('base-broken', 'open');
		return verdict('torn-out', base === 'whole' ? 'clear' : 'likely');
	}
	if (base === 'clean-break') {
		say('base-broken', 'for');
		say('no-bays', 'for');
		if (root === 'none') say('root-missing', 'open');
		if (root === 'stub') say('root-stub', 'open');
		return verdict('broken-crown', root === 'stub' ? 'likely' : 'clear');
	}
	// a missing root alone says nothing: the base has to be seen
	if (root === 'none') say('root-missing', 'open');
	if (root === 'stub') say('root-stub', 'open');
	say('no-bays', 'open');
	return verdict('cannot-tell', 'open');
}
