import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import type { Message } from '../../../src/lib/domain/compare/sayTrait';
import { allQuestions } from '../../../src/lib/domain/quiz/buildRound';
import { judge } from '../../../src/lib/domain/quiz/judge';
import { AGE_BANDS, PART_KINDS, type Question } from '../../../src/lib/domain/quiz/question';
import { seeded } from '../../../src/lib/domain/quiz/seeded';
import { formatIcu } from '../../../src/lib/kiosk/formatIcu';
import { randomGround } from './randomGround';

const LANGUAGES = ['en', 'fr', 'es'];
const WORDS = Object.fromEntries(
	LANGUAGES.map((lang) => {
		const file = path.resolve(__dirname, `../../../content/ui/${lang}.yaml`);
		return [lang, parse(readFileSync(file, 'utf8')) as Record<string, string>];
	}),
);

function messagesOf(question: Question): Message[] {
	const labels = question.options.flatMap(({ label }) => (label.kind === 'word' ? [label.message] : []));
	const topic = {
		key: `quiz_topic_${question.topic.replace(/-|([A-Z])/g, (_, c: string | undefined) => `_${c?.toLowerCase() ?? ''}`)}`,
		values: {},
	};
	return [
		question.ask,
		question.hint,
		question.because,
		topic,
		...labels,
		...question.options.map(({ why }) => why),
	];
}

/** Every message that a built question may show, once for each set of values that chooses another wording. */
function everyMessage(): Message[] {
	const random = seeded('words');
	const seen = new Map<string, Message>();
	for (let i = 0; i < 60; i += 1) {
		const ground = { ...randomGround(14, random), claims: [] };
		for (const band of AGE_BANDS)
			for (const question of allQuestions(ground, band, `${i}`)) {
				for (const message of messagesOf(question))
					seen.set(`${message.key} ${JSON.stringify(message.values)}`, message);
				if (question.task.kind === 'caliper')
					for (const share of [0.3, 1, 3]) {
						const { why } = judge(question, { kind: 'reading', mm: question.task.right_mm * share });
						seen.set(why.key, why);
					}
			}
	}
	for (const wanted of PART_KINDS)
		for (const found of [...PART_KINDS, 'side'])
			if (found !== wanted)
				seen.set(`${wanted} ${found}`, { key: 'quiz_part_not', values: { wanted, found } });
	return [...seen.values()];
}

const MESSAGES = everyMessage().filter(({ key }) => key !== 'quiz_prey');

describe('words of built questions', () => {
	it.each(LANGUAGES)('%s has them all, filled without a gap', (lang) => {
		expect(MESSAGES.length).toBeGreaterThan(200);
		const missing = new Set(MESSAGES.map(({ key }) => key).filter((key) => !WORDS[lang][key]));
		expect([...missing]).toEqual([]);
		for (const { key, values } of MESSAGES) {
			const said = formatIcu(lang, WORDS[lang][key], values);
			expect(said, key).not.toMatch(/undefined|NaN|\{|\}/);
			expect(said.length, key).toBeGreaterThan(1);
		}
	});

	it('numbers are written alike in all languages: the same arguments in the same form', () => {
		const forms = (text: string) => (text.match(/\{\w+, number(, ::[^}]*)?\}/g) ?? []).sort();
		for (const key of Object.keys(WORDS.en).filter((one) => /^(desk_)?quiz_/.test(one)))
			for (const lang of LANGUAGES)
				expect([...new Set(forms(WORDS[lang][key]))], `${lang} ${key}`).toEqual([
					...new Set(forms(WORDS.en[key])),
				]);
	});

	it('no measure has more than two decimals', () => {
		for (const lang of LANGUAGES)
			for (const { key, values } of MESSAGES) {
				const exact = Object.fromEntries(
					Object.entries(values).map(([name, value]) => [
						name,
						typeof value === 'number' && !Number.isInteger(value) ? value + 0.00123 : value,
					]),
				);
				expect(formatIcu(lang, WORDS[lang][key], exact), `${lang} ${key}`).not.toMatch(/\d[.,]\d{3}/);
			}
	});

	it('questions and reasons are short: 25 words a sentence at most', () => {
		for (const lang of LANGUAGES)
			for (const { key, values } of MESSAGES)
				for (const sentence of formatIcu(lang, WORDS[lang][key], values).split(/[.?!](?:\s|$)/))
					expect(sentence.split(/\s+/).length, `${lang} ${key}: ${sentence}`).toBeLessThanOrEqual(25);
	});

	it('none is left over that no question uses', () => {
		const used = new Set(MESSAGES.map(({ key }) => key));
		const ours =
			/^quiz_(ask|because|hint|why|touch|part|corner|fate|jaw|reading|caliper|verdict|order|topic)_/;
		// claims have words of the curator's own and these three answers
		const claims = new Set(['quiz_verdict_holds', 'quiz_verdict_wrong', 'quiz_verdict_debated']);
		const left = Object.keys(WORDS.en).filter((key) => ours.test(key) && !used.has(key) && !claims.has(key));
		expect(left).toEqual([]);
	});
});
