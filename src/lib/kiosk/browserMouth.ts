import { placed } from './placed';
import type { Mouth } from './narration.svelte';

/**
 * The browser's own voices and its player. Only voices that live on this machine: others would send the words away.
 * Null where there is no browser.
 */
export function browserMouth(): Mouth | null {
	if (typeof window === 'undefined') return null;
	const speech = 'speechSynthesis' in window ? window.speechSynthesis : null;
	const voices = () => speech?.getVoices().filter(({ localService }) => localService) ?? [];
	return {
		languages: () => voices().map(({ lang }) => lang),
		onVoices(changed) {
			speech?.addEventListener?.('voiceschanged', changed);
			return () => speech?.removeEventListener?.('voiceschanged', changed);
		},
		say(text, language, gain, onEnd) {
			// sentence by sentence: long texts break off in some engines. common practice, no source
			const sentences = text.match(/[^.!?…]+[.!?…]*\s*/gu) ?? [text];
			const voice = voices().find(({ lang }) => lang.toLowerCase().startsWith(language.toLowerCase()));
			sentences.forEach((sentence, i) => {
				const utterance = new SpeechSynthesisUtterance(sentence);
				utterance.lang = voice?.lang ?? language;
				utterance.voice = voice ?? null;
				utterance.volume = gain;
				if (i === sentences.length - 1) utterance.onend = onEnd;
				utterance.onerror = onEnd;
				speech?.speak(utterance);
			});
			return {
				stop: () => speech?.cancel(),
				// what has been handed to the engine keeps its loudness
				setGain: () => undefined,
			};
		},
		play(url, gain, onEnd, onFail) {
			const audio = new Audio(placed(url));
			audio.volume = gain;
			audio.onended = onEnd;
			audio.onerror = onFail;
			audio.play().catch(onFail);
			return {
				stop() {
					audio.onended = null;
					audio.onerror = null;
					audio.pause();
					audio.removeAttribute('src');
				},
				setGain(next) {
					audio.volume = next;
				},
			};
		},
	};
}
