import { createHash } from 'node:crypto'
import pg from 'pg'
import { POSTGRES_MIGRATIONS } from './postgresMigrations.ts'
import { StoreError, type StoreTrouble } from './storeError.ts'

/**
 * A database that does not answer within these is taken for gone: people are told, and what they do is asked for again
 * later. Long enough for a busy disk.
 */
const CONNECT_WITHIN_MS = 3_000
const ANSWER_WITHIN_MS = 5_000

/** Any number that other programs in the same database are unlikely to lock. */
const MIGRATION_LOCK = 4_867_320_117

/**
 * SQLSTATE codes, https://www.postgresql.org/docs/17/errcodes-appendix.html, whole or by their class (the first two
 * characters), by the trouble that people are told of.
 */
const TROUBLE_OF_STATE: Record<string, StoreTrouble> = {
  '53100': 'full',
  '25006': 'read-only',
  'XX001': 'unreadable',
  'XX002': 'unreadable',
  '55P03': 'busy',
  '40001': 'busy',
  '40P01': 'busy',
  '57P01': 'unreachable',
  '57P02': 'unreachable',
  '57P03': 'unreachable',
  '57P05': 'unreachable',
  '53300': 'unreachable',
  '3D000': 'unreachable',
  '57014': 'unreachable',
  '08': 'unreachable',
  '28': 'unreachable',
}

/** What Node says when the other side of a socket is not there, or goes. */
const LOST_SOCKET = /^E(CONNREFUSED|CONNRESET|TIMEDOUT|PIPE|NOTFOUND|AI_AGAIN|HOSTUNREACH|NETUNREACH|CONNABORTED)$/

/** The driver's own words for the same, which carry no code. */
const LOST_CONNECTION = /connection terminated|connection error|timeout|not queryable|connection ended/i

/** What the driver threw, as a store's error. */
export function postgresErrorOf(thrown: unknown): StoreError {
  if (thrown instanceof StoreError) return thrown
  const message = thrown instanceof Error ? thrown.message : String(thrown)
  const code = (thrown as { code?: unknown } | null)?.code
  return new StoreError(troubleOf(typeof code === 'string' ? code : '', message), message || String(code), { cause: thrown })
}

function troubleOf(code: string, message: string): StoreTrouble {
  if (LOST_SOCKET.test(code)) return 'unreachable'
  if (code === '') return LOST_CONNECTION.test(message) ? 'unreachable' : 'other'
  return TROUBLE_OF_STATE[code] ?? TROUBLE_OF_STATE[code.slice(0, 2)] ?? 'other'
}

/** How to connect to the database at that address, for the pool and for a line of one's own. */
export function postgresConfig(url: string): pg.ClientConfig {
  return {
    connectionString: url,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    query_timeout: ANSWER_WITHIN_MS,
    keepAlive: true,
    application_name: 'halfstop',
    types: { getTypeParser: typeParser as typeof pg.types.getTypeParser },
  }
}

/** 8-byte integers as numbers: all of ours are counts and milliseconds, far below 2^53. */
function typeParser(oid: number, format?: 'text' | 'binary'): unknown {
  if (format !== 'binary' && oid === pg.types.builtins.INT8) return Number
  return pg.types.getTypeParser(oid, format as 'text')
}

/** Opens a pool of at most so many connections. Nothing connects before the first query. */
export function openPool(url: string, connections: number): pg.Pool {
  const pool = new pg.Pool({ ...postgresConfig(url), max: connections, idleTimeoutMillis: 60_000 })
  // A connection lost while idle: the next query takes another, and fails by itself should there be none.
  pool.on('error', () => {})
  return pool
}

/** Runs `work` in one transaction: all of it is kept or nothing. @throws StoreError */
export async function inPostgresTransaction<Value>(pool: pg.Pool, work: (client: pg.PoolClient) => Promise<Value>): Promise<Value> {
  let client: pg.PoolClient
  try {
    client = await pool.connect()
  } catch (thrown) {
    throw postgresErrorOf(thrown)
  }
  let broken: Error | undefined
  // A connection lost between two steps: the next step fails, but an event that nobody hears would end the process.
  const lost = (error: Error) => { broken = error }
  client.on('error', lost)
  try {
    await client.query('BEGIN')
    const value = await work(client)
    await client.query('COMMIT')
    return value
  } catch (thrown) {
    await client.query('ROLLBACK').catch((error: Error) => { broken = error })
    throw postgresErrorOf(thrown)
  } finally {
    client.off('error', lost)
    client.release(broken)
  }
}

/**
 * Leads the database up to the present shape; of several relays that start at once, one does and the others wait.
 * @throws StoreError `unreadable` when it is of a newer release than this one.
 */
export async function migratePostgres(pool: pg.Pool): Promise<void> {
  await inPostgresTransaction(pool, async (client) => {
    await client.query('SELECT pg_advisory_xact_lock($1)', [MIGRATION_LOCK])
    await client.query('CREATE TABLE IF NOT EXISTS migrations (version INTEGER PRIMARY KEY, applied_ms BIGINT NOT NULL)')
    const { rows } = await client.query<{ newest: number | null }>('SELECT max(version) AS newest FROM migrations')
    const present = rows[0]?.newest ?? 0
    if (present > POSTGRES_MIGRATIONS.length) {
      throw new StoreError('unreadable', `the store has shape ${present}, this release knows ${POSTGRES_MIGRATIONS.length}`)
    }
    for (let version = present + 1; version <= POSTGRES_MIGRATIONS.length; version++) {
      await client.query(POSTGRES_MIGRATIONS[version - 1] as string)
      await client.query('INSERT INTO migrations (version, applied_ms) VALUES ($1, $2)', [version, Date.now()])
    }
  })
}

/** A short name for a statement, so that a connection prepares it once. */
export function statementName(sql: string): string {
  return createHash('sha256').update(sql).digest('base64url').slice(0, 20)
}
