import type { StaffAnswer } from '../../content/staffAnswer';
import type { ScreenText } from '../../kiosk/text.svelte';

/** Why staff were not let in, in words; null for an answer that is good. `least`: letters of a passphrase. */
export function sayFault(text: ScreenText, answer: StaffAnswer | null, least: number): string | null {
	if (answer === null) return text.say('desk_no_answer');
	if (answer.ok) return null;
	const { code, wait_s = 1 } = answer;
	if (code === 'wait')
		return wait_s < 100
			? text.say('desk_enter_why_wait', { seconds: wait_s })
			: text.say('desk_enter_why_wait_minutes', { minutes: Math.ceil(wait_s / 60) });
	return code === 'short' ? text.say('desk_enter_why_short', { least }) : text.say(`desk_enter_why_${code}`);
}
