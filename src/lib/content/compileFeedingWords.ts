import { checkFields } from './checkFields';
import { checkMessage } from './checkMessage';
import { placeOf } from './explainIssue';
import type { FeedingWords } from './feedingContent';
import { feedingWordsSchema } from './feedingSchemas';
import { fieldPath } from './fieldPath';
import { finding, type Finding } from './finding';
import { countWords, MOST_WORDS_IN_SENTENCE } from './proseFindings';
import type { Places, YamlResult } from './readYaml';

/** Checks the words of `feeding/` in one language: one bad entry leaves out that entry. */
export function compileFeedingWords(yaml: YamlResult): {
	compiled: FeedingWords | null;
	findings: Finding[];
} {
	const { value, findings } = checkFields(
		feedingWordsSchema,
		yaml.value,
		yaml.places,
		[],
		(path) => path.length === 2 && path[0] !== 'corners',
	);
	findings.push(...longSentences(yaml.value, [], yaml.places));
	if (!value) return { compiled: null, findings };
	const everyday: Record<string, string> = {};
	for (const [id, text] of Object.entries(value.everyday)) {
		const message = checkMessage(text);
		const path = ['everyday', id];
		const place = placeOf(yaml.places, path);
		if (!message.ok)
			findings.push(finding('bad-message', place, fieldPath(path), { found: text, why: message.why }));
		else if (message.names.join() !== 'count')
			findings.push(finding('everyday-count', place, fieldPath(path), { found: text }));
		else everyday[id] = text;
	}
	return { compiled: { ...value, everyday }, findings };
}

/** Warnings on sentences that visitors would have to read twice. */
function longSentences(value: unknown, path: (string | number)[], places: Places): Finding[] {
	if (typeof value === 'object' && value !== null)
		return Object.entries(value).flatMap(([key, item]) => longSentences(item, [...path, key], places));
	if (typeof value !== 'string') return [];
	return value.split(/(?<=[.!?…])\s+/).flatMap((sentence) => {
		const words = countWords(sentence);
		if (words <= MOST_WORDS_IN_SENTENCE) return [];
		const begins = `${sentence.split(/\s+/).slice(0, 6).join(' ')}…`;
		const data = { words, most: MOST_WORDS_IN_SENTENCE, begins };
		return [finding('long-sentence', placeOf(places, path), fieldPath(path), data)];
	});
}
