import type { TableEvent } from '../../kiosk/comparison.svelte';
import type { ScreenText } from '../../kiosk/text.svelte';

/** One sentence on what was done last to the table. `titleOf` gives a tooth's title by its id. */
export function sayEvent(event: TableEvent, titleOf: (id: string) => string, text: ScreenText): string {
	const place = event.place + 1;
	if (event.kind === 'opened') return text.say('table_opened', { place });
	const title = titleOf(event.id);
	if (event.kind === 'taken') return text.say('table_taken', { title });
	if (event.kind === 'moved' || event.went === null) return text.say('table_laid', { title, place });
	return text.say('table_swapped', { title, place, old: titleOf(event.went) });
}
