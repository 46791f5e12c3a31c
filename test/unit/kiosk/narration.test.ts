import { describe, expect, it } from 'vitest';
import { Narration, type Mouth, type Telling } from '../../../src/lib/kiosk/narration.svelte';

/** A mouth that notes what it is asked; `end` and `fail` end what sounds. */
function mouth(languages: string[]) {
	const log: string[] = [];
	const ends: (() => void)[] = [];
	const fails: (() => void)[] = [];
	let changed: () => void = () => undefined;
	const sounding = (name: string) => ({
		stop: () => void log.push(`stop ${name}`),
		setGain: (gain: number) => void log.push(`gain ${gain}`),
	});
	const it: Mouth = {
		languages: () => languages,
		onVoices(call) {
			changed = call;
			return () => void log.push('forgotten');
		},
		say(text, language, gain, onEnd) {
			log.push(`say ${language} ${gain} ${text}`);
			ends.push(onEnd);
			return sounding(text);
		},
		play(url, gain, onEnd, onFail) {
			log.push(`play ${url} ${gain}`);
			ends.push(onEnd);
			fails.push(onFail);
			return sounding(url);
		},
	};
	return { it, log, ends, fails, voicesChange: () => changed() };
}

const words = (key: string, language = 'en', soundUrl: string | null = null): Telling => ({
	key,
	text: () => `words of ${key}`,
	language,
	soundUrl,
});

describe('Narration', () => {
	it('offers what has a recording, or a voice of its language on this machine, and nothing else', () => {
		const narration = new Narration(mouth(['fr-CA', 'en_US']).it, () => 1);
		narration.listen();
		expect(narration.canTell(words('a', 'en'))).toBe(true);
		expect(narration.canTell(words('a', 'fr'))).toBe(true);
		expect(narration.canTell(words('a', 'es'))).toBe(false);
		expect(narration.canTell(words('a', 'es', '/sounds/a/es.mp3'))).toBe(true);
		expect(new Narration(null, () => 1).canTell(words('a', 'en', '/sounds/a/en.mp3'))).toBe(false);
	});

	it('finds voices that the browser finds late', () => {
		const languages: string[] = [];
		const { it: late, voicesChange } = mouth(languages);
		const narration = new Narration(late, () => 1);
		narration.listen();
		expect(narration.canTell(words('a'))).toBe(false);
		languages.push('en-GB');
		voicesChange();
		expect(narration.canTell(words('a'))).toBe(true);
	});

	it('prefers the recording, reads with the loudness of now, and is silent until asked', () => {
		const { it: speaks, log } = mouth(['en']);
		let gain = 0.5;
		const narration = new Narration(speaks, () => gain);
		narration.listen();
		expect(log).toEqual([]);
		narration.toggle(words('a', 'en', '/sounds/a/en.mp3?v=1'));
		expect(narration.current).toBe('a');
		gain = 0.25;
		narration.setGain(gain);
		narration.toggle(words('b'));
		expect(narration.current).toBe('b');
		expect(log).toEqual([
			'play /sounds/a/en.mp3?v=1 0.5',
			'gain 0.25',
			'stop /sounds/a/en.mp3?v=1',
			'say en 0.25 words of b',
		]);
	});

	it('stops at the second touch and can be begun again', () => {
		const { it: speaks, log } = mouth(['en']);
		const narration = new Narration(speaks, () => 1);
		narration.listen();
		for (let i = 0; i < 3; i += 1) narration.toggle(words('a'));
		expect(narration.current).toBe('a');
		expect(log).toEqual(['say en 1 words of a', 'stop words of a', 'say en 1 words of a']);
	});

	it('an end that comes late ends nothing that began after it', () => {
		const { it: speaks, ends } = mouth(['en']);
		const narration = new Narration(speaks, () => 1);
		narration.listen();
		narration.toggle(words('a'));
		narration.toggle(words('b'));
		ends[0]();
		expect(narration.current).toBe('b');
		ends[1]();
		expect(narration.current).toBe(null);
	});

	it('uses a voice where the recording cannot be played, and nothing where there is none', () => {
		const { it: speaks, log, fails } = mouth(['en']);
		const narration = new Narration(speaks, () => 1);
		narration.listen();
		narration.toggle(words('a', 'en', '/a.mp3'));
		fails[0]();
		expect(narration.current).toBe('a');
		expect(log.at(-1)).toBe('say en 1 words of a');
		narration.toggle(words('b', 'es', '/b.mp3'));
		fails[1]();
		expect(narration.current).toBe(null);
	});

	it('falls silent with the sound off and when the page goes', () => {
		const { it: speaks, log } = mouth(['en']);
		const narration = new Narration(speaks, () => 1);
		const leave = narration.listen();
		narration.toggle(words('a'));
		narration.setGain(0);
		expect(narration.current).toBe(null);
		narration.toggle(words('a'));
		leave();
		expect(narration.current).toBe(null);
		expect(log.slice(-2)).toEqual(['forgotten', 'stop words of a']);
	});
});
