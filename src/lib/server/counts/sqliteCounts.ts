import Database from 'libsql';
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { factsKey, readFactsKey, type CountKind, type CountsStore, type Tally } from './countsStore';

interface Row {
	day: string;
	facts: string;
	count: number;
}

/**
 * Counts in one SQLite file, made where there is none. Write-ahead log and a full sync at each commit: what `add` has
 * confirmed outlives a killed process and a power cut. Throws where the file cannot be opened or is none of ours.
 */
export function sqliteCounts(file: string): CountsStore {
	mkdirSync(path.dirname(file), { recursive: true });
	const db = new Database(file);
	try {
		db.pragma('journal_mode = WAL');
		db.pragma('synchronous = FULL');
		db.pragma('busy_timeout = 5000');
		db.exec(
			`create table if not exists tally (
				kind text not null, day text not null, facts text not null, count integer not null,
				primary key (kind, day, facts)
			) without rowid;
			create table if not exists batch (name text primary key, day text not null) without rowid;`,
		);
	} catch (problem) {
		db.close();
		throw problem;
	}
	const known = db.prepare('insert or ignore into batch (name, day) values (?, ?)');
	const more = db.prepare(
		`insert into tally (kind, day, facts, count) values (?, ?, ?, 1)
		on conflict (kind, day, facts) do update set count = count + 1`,
	);
	const read = db.prepare(
		'select day, facts, count from tally where kind = ? and day >= ? order by day, facts',
	);
	const addAll = db.transaction((batch: string, day: string, entries: Parameters<CountsStore['add']>[2]) => {
		if (known.run(batch, day).changes === 0) return false;
		for (const { kind, facts } of entries) more.run(kind, day, factsKey(facts));
		return true;
	});
	const forget = db.transaction((day: string) => {
		const { changes } = db.prepare('delete from tally where day < ?').run(day);
		db.prepare('delete from batch where day < ?').run(day);
		return changes;
	});
	return {
		where: `SQLite (${file})`,
		kind: 'sqlite',
		away: false,
		add: async (batch, day, entries) => addAll.immediate(batch, day, entries) as boolean,
		tallies: async (kind: CountKind, fromDay = '') =>
			(read.all(kind, fromDay) as Row[]).map(({ day, facts, count }): Tally => ({
				kind,
				day,
				facts: readFactsKey(facts),
				count,
			})),
		forgetBefore: async (day) => forget.immediate(day) as number,
		close: async () => void db.close(),
	};
}
