import type { QuizView } from '../../content/quiz/view';
import type { Message } from '../../domain/compare/sayTrait';
import type { Question } from '../../domain/quiz/question';
import type { ScreenText } from '../../kiosk/text.svelte';

/** Says a message of the quiz: the screen's words, or those that a curator wrote for a question of the museum's own. */
export function sayQuiz(text: ScreenText, quiz: QuizView, { key, values }: Message): string {
	if (key === 'quiz_prey')
		return quiz.preys.find(({ id }) => id === values.prey)?.name ?? String(values.prey);
	const own = /^quiz_own_(ask|hint|because|why)$/.exec(key)?.[1];
	if (!own) return text.say(key, values);
	const words = [...quiz.claims, ...quiz.questions].find(({ id }) => id === values.own)?.text;
	if (!words) return '';
	return own === 'why' ? (words.why[String(values.option)] ?? '') : words[own as 'ask' | 'hint' | 'because'];
}

/** Name of what a question is about. */
export function sayTopic(text: ScreenText, quiz: QuizView, topic: string): string {
	const key = `quiz_topic_${topic.replace(/-/g, '_').replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)}`;
	if (text.has(key)) return text.say(key);
	return [...quiz.claims, ...quiz.questions].find((own) => own.topic === topic)?.text.about ?? topic;
}

/** Letters that name options: A, B, C. */
export const letterOf = (index: number): string => String.fromCharCode(65 + index);

/** What an option is called on its button. */
export function sayOption(text: ScreenText, quiz: QuizView, question: Question, index: number): string {
	const { label } = question.options[index];
	if (label.kind === 'word') return sayQuiz(text, quiz, label.message);
	return text.say(label.kind === 'tooth' ? 'quiz_tooth' : 'quiz_pin', { letter: letterOf(index) });
}
