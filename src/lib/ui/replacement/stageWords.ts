import type { ArrangementView, StageView } from '../../content/replacement/view';
import type { Arrangement } from '../../domain/replacement/lifeForm';
import type { LifeStageName } from '../../domain/replacement/lifeStage';
import type { ScreenText } from '../../kiosk/text.svelte';

export type StageId = LifeStageName | 'shed';

export interface Said {
	name: string;
	line: string;
	/** null = nothing more to say */
	more: string | null;
	/** language of the words */
	lang: string;
}

/** The gallery's words for a tooth's life. */
export interface StageWords {
	stage(id: StageId): Said;
	arrangement(id: Arrangement): Said;
}

/** Words of the curators' tables; the moment of falling has words of the screen's own. */
export function stageWords(
	text: ScreenText,
	tables: { stages: readonly StageView[]; arrangements: readonly ArrangementView[] },
): StageWords {
	const said = (entries: readonly (StageView | ArrangementView)[], id: string): Said => {
		const entry = entries.find((one) => one.id === id);
		return entry
			? { name: entry.name, line: entry.line, more: entry.more, lang: entry.textLang }
			: { name: id, line: '', more: null, lang: text.lang };
	};
	return {
		stage: (id) =>
			id === 'shed'
				? {
						name: text.say('repl_stage_shed'),
						line: text.say('repl_stage_shed_says'),
						more: null,
						lang: text.lang,
					}
				: said(tables.stages, id),
		arrangement: (id) => said(tables.arrangements, id),
	};
}
