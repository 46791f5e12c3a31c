import type { RoundState } from './flow';

/** What a class has seen of one topic. */
export interface TopicSummary {
	topic: string;
	/** answers given, and how many of them were right, all teams together */
	answers: number;
	right: number;
}

/** What was learned, by topic, in the order in which it came up. Nothing is ranked and no team is named. */
export function summary({ results }: RoundState): TopicSummary[] {
	const topics = new Map<string, TopicSummary>();
	for (const { topic, teams, skipped } of results) {
		if (skipped) continue;
		const entry = topics.get(topic) ?? { topic, answers: 0, right: 0 };
		for (const { judgement } of teams) {
			if (!judgement) continue;
			entry.answers += 1;
			if (judgement.right) entry.right += 1;
		}
		topics.set(topic, entry);
	}
	return [...topics.values()];
}

/** Right answers of each team, for the row of marks beside its sign. */
export function teamMarks({ results, teams }: RoundState): { answers: number; right: number }[] {
	return Array.from({ length: teams }, (_, team) => {
		const judged = results.flatMap((one) => one.teams[team]?.judgement ?? []);
		return { answers: judged.length, right: judged.filter(({ right }) => right).length };
	});
}
