import type { ScreenText } from '../../kiosk/text.svelte';
import type { Arrangement } from '../../domain/replacement/lifeForm';
import type { LifeStageName } from '../../domain/replacement/lifeStage';

export type StageId = LifeStageName | 'shed';

/** The gallery's words for a tooth's life. */
export interface StageWords {
	name(stage: StageId): string;
	/** one sentence */
	caption(stage: StageId, arrangement: Arrangement): string;
	arrangement(id: Arrangement): { name: string; short: string };
}

/** The words as they stand under `repl_stage_...` and `repl_kind_...`; a caption may differ by arrangement. */
export function stageWords(text: ScreenText): StageWords {
	return {
		name: (stage) => text.say(`repl_stage_${stage}`),
		caption: (stage, arrangement) => {
			const own = `repl_stage_${stage}_${arrangement}`;
			return text.say(text.has(own) ? own : `repl_stage_${stage}_says`);
		},
		arrangement: (id) => ({ name: text.say(`repl_kind_${id}`), short: text.say(`repl_kind_${id}_short`) }),
	};
}
