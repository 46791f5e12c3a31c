import pg from 'pg';
import type { Logger } from '../logger';
import { factsKey, readFactsKey, type CountKind, type CountsStore, type Tally } from './countsStore';
import { migratePostgres } from './migratePostgres';

export interface PostgresOptions {
	logger: Logger;
	/** connections at once; the rest wait */
	most?: number;
	/** longest wait for a connection, ms */
	connect_ms?: number;
	/** longest time for one statement, ms; the server ends it, and so do we where the server hangs */
	statement_ms?: number;
}

interface Row {
	day: string;
	facts: string;
	count: number;
}

/** One statement is one transaction: the batch and all its counts, or nothing. */
const ADD = `
	with fresh as (
		insert into tooth_table_batch (name, day) values ($1, $2) on conflict do nothing returning name
	), counted as (
		insert into tooth_table_tally as tally (kind, day, facts, count)
		select kind, $2, facts, more
		from unnest($3::text[], $4::text[], $5::integer[]) as entry (kind, facts, more)
		where exists (select from fresh)
		on conflict (kind, day, facts) do update set count = tally.count + excluded.count
	)
	select
		(select count(*)::integer from fresh) as fresh,
		-- a server that is set to confirm before the disk has it does not do so here
		set_config(
			'synchronous_commit',
			case current_setting('synchronous_commit') when 'off' then 'on' else current_setting('synchronous_commit') end,
			true
		)`;

/**
 * Counts in a PostgreSQL database, for several servers at once: the same promises as in SQLite. While the database is
 * away every call is refused, soon; when it is back they work again. Throws where the address is none; says on the
 * terminal, once each time, that the database went and that it is back. The password stands in nothing that is said.
 */
export function postgresCounts(url: string, options: PostgresOptions): CountsStore {
	const { logger, most = 10, connect_ms = 5_000, statement_ms = 5_000 } = options;
	const name = postgresName(url);
	const pool = new pg.Pool({
		connectionString: url,
		max: most,
		connectionTimeoutMillis: connect_ms,
		idleTimeoutMillis: 30_000,
		statement_timeout: statement_ms,
		query_timeout: statement_ms * 1.5,
		keepAlive: true,
		application_name: 'tooth-table',
		// connections that rest keep no process alive
		allowExitOnIdle: true,
	});
	let away = false;
	const gone = (problem: unknown): void => {
		if (!away)
			logger.warn(`Counts cannot be kept for now: ${name} does not answer as it should (${words(problem)}).`);
		away = true;
	};
	// a connection that rests was cut: the next call makes another
	pool.on('error', gone);

	/** the tables stand; made anew after a try that failed */
	let standing: Promise<void> | null = null;
	async function query<Found extends pg.QueryResultRow>(text: string, values: unknown[]): Promise<Found[]> {
		try {
			standing ??= migratePostgres(pool);
			await standing.catch((problem: unknown) => {
				standing = null;
				throw problem;
			});
			const { rows } = await pool.query<Found>(text, values);
			if (away) logger.info(`Counts are kept again in ${name}.`);
			away = false;
			return rows;
		} catch (problem) {
			gone(problem);
			throw problem;
		}
	}

	return {
		where: name,
		kind: 'postgresql',
		get away() {
			return away;
		},
		async add(batch, day, entries) {
			const sums = new Map<string, { kind: CountKind; facts: string; more: number }>();
			for (const { kind, facts } of entries) {
				const key = factsKey(facts);
				const before = sums.get(`${kind} ${key}`);
				sums.set(`${kind} ${key}`, { kind, facts: key, more: (before?.more ?? 0) + 1 });
			}
			// in one order everywhere: two servers that add the same never wait for each other in a ring
			const rows = [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
			const [{ fresh }] = await query<{ fresh: number }>(ADD, [
				batch,
				day,
				rows.map(({ kind }) => kind),
				rows.map(({ facts }) => facts),
				rows.map(({ more }) => more),
			]);
			return fresh === 1;
		},
		async tallies(kind, fromDay = '') {
			const rows = await query<Row>(
				'select day, facts, count from tooth_table_tally where kind = $1 and day >= $2 order by day, facts',
				[kind, fromDay],
			);
			return rows.map(({ day, facts, count }): Tally => ({ kind, day, facts: readFactsKey(facts), count }));
		},
		async forgetBefore(day) {
			const [{ gone: went }] = await query<{ gone: number }>(
				`with old as (delete from tooth_table_tally where day < $1 returning day),
				sent as (delete from tooth_table_batch where day < $1)
				select count(*)::integer as gone from old`,
				[day],
			);
			return went;
		},
		close: () => pool.end(),
	};
}

/** `postgres://host:5432/name`: where it is, without who may come in. Throws where it is no such address. */
export function postgresName(url: string): string {
	let at: URL;
	try {
		at = new URL(url);
	} catch {
		throw new Error('it is no address');
	}
	if (at.protocol !== 'postgres:' && at.protocol !== 'postgresql:')
		throw new Error('it does not begin with postgres://');
	const host = at.hostname || at.searchParams.get('host') || 'localhost';
	return `PostgreSQL (${host}${at.port ? `:${at.port}` : ''}${at.pathname})`;
}

/** What went wrong, as the driver says it; it never holds the address. */
function words(problem: unknown): string {
	// several addresses were tried: each has its own reason
	if (problem instanceof AggregateError && problem.errors.length > 0) return words(problem.errors[0]);
	return problem instanceof Error ? problem.message : String(problem);
}
