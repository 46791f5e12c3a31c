import type { Pool } from 'pg';

/** Each is done once, in this order, and never changed afterwards; a new need is a new line at the end. */
export const MIGRATIONS: readonly string[] = [
	// text sorts by its bytes, as in SQLite, whatever the database's language
	`create table tooth_table_tally (
		kind text collate "C" not null, day text collate "C" not null, facts text collate "C" not null,
		count integer not null, primary key (kind, day, facts)
	);
	create index tooth_table_tally_day on tooth_table_tally (day);
	create table tooth_table_batch (name text collate "C" primary key, day text collate "C" not null);
	create index tooth_table_batch_day on tooth_table_batch (day);`,
];

/** Any number that no other program of this database is likely to lock. */
const LOCK = 7_264_501_934;

/** Brings the tables up to date, all or nothing. Of several servers that begin at once one does it, the others wait. */
export async function migratePostgres(pool: Pool, migrations = MIGRATIONS): Promise<void> {
	const client = await pool.connect();
	let broken: Error | undefined;
	try {
		await client.query('begin');
		await client.query('select pg_advisory_xact_lock($1)', [LOCK]);
		await client.query('create table if not exists tooth_table_version (version integer not null)');
		const { rows } = await client.query<{ version: number }>(
			'select coalesce(max(version), 0)::integer as version from tooth_table_version',
		);
		const { version } = rows[0];
		if (version > migrations.length)
			throw new Error(`its tables were made by a newer Tooth Table (version ${version} of them)`);
		for (const [i, text] of migrations.entries()) {
			if (i < version) continue;
			await client.query(text);
			await client.query('insert into tooth_table_version values ($1)', [i + 1]);
		}
		await client.query('commit');
	} catch (problem) {
		broken = problem as Error;
		throw problem;
	} finally {
		// a connection in the middle of something is thrown away, and with it what it had begun
		client.release(broken);
	}
}
