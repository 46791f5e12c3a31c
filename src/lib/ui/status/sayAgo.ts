import type { ScreenText } from '../../kiosk/text.svelte';

/** `40 seconds ago`, `3 minutes ago`, `5 hours ago` in the language of the page, which has a formatter. */
export function sayAgo(text: Pick<ScreenText, 'say'>, seconds: number): string {
	if (seconds < 100) return text.say('status_ago_s', { count: Math.round(seconds) });
	if (seconds < 6000) return text.say('status_ago_min', { count: Math.round(seconds / 60) });
	return text.say('status_ago_h', { count: Math.round(seconds / 3600) });
}
