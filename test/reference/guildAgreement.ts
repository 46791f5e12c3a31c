import { rankGuilds, type GuildBands, type GuildId } from '../../src/lib/domain/feeding/guilds';
import { placeTooth } from '../../src/lib/domain/feeding/place';
import type { Position } from '../../src/lib/domain/feeding/position';
import { tableEvidence } from '../../src/lib/domain/feeding/tableEvidence';
import type { Thresholds } from '../../src/lib/domain/feeding/thresholds';
import type { GuildRow } from './feedingRows';

export interface Agreement extends GuildRow {
	position: Position;
	uncertainty: number;
	ranked: { id: GuildId; probability: number }[];
	/** the likeliest guild is one that was expected; an expected one is second with a quarter or more; neither */
	agrees: 'yes' | 'second' | 'no';
}

/** Whether the feeding guide names the guild that each row should have. */
export function guildAgreement(
	rows: readonly GuildRow[],
	thresholds: Thresholds,
	guilds: readonly GuildBands[],
): Agreement[] {
	return rows.map((row) => {
		const evidence = tableEvidence(row.row, thresholds);
		const { position, uncertainty } = placeTooth(evidence, thresholds);
		const ranked = rankGuilds(evidence, guilds);
		const [first, second] = ranked;
		const agrees = row.expected.includes(first.id)
			? 'yes'
			: row.expected.includes(second.id) && second.probability >= 0.25
				? 'second'
				: 'no';
		return { ...row, position, uncertainty, ranked, agrees };
	});
}
