import pino from 'pino'
import type { Settings } from './settings.ts'

/** What may stand beside an event. Never a key, a secret, a person's name or a document's content. */
export type LogFields = Readonly<Record<string, string | number | boolean>>

export interface Log {
  debug(event: string, fields?: LogFields): void
  info(event: string, fields?: LogFields): void
  warn(event: string, fields?: LogFields): void
  error(event: string, fields?: LogFields): void
}

/** Fields by which a secret or a person could slip in through a later mistake: their values are struck out. */
const NEVER_WRITTEN = ['key', 'keys', 'secret', 'name', 'cookie', 'authorization', 'url']

/**
 * One line of JSON an event: `level`, `time` (RFC 3339), `pid` (several relays may share one log), `event` in words, then
 * the fields. Written at once, so that the last line before a crash is there.
 */
export function makeLog(level: Settings['LOG_LEVEL'], write?: (line: string) => void): Log {
  const target = write === undefined ? pino.destination({ sync: true }) : { write: (line: string) => write(line.trimEnd()) }
  const logger = pino({
    level: level === 'none' ? 'silent' : level,
    base: { pid: process.pid },
    messageKey: 'event',
    timestamp: pino.stdTimeFunctions.isoTime,
    formatters: { level: (label) => ({ level: label }) },
    redact: { paths: NEVER_WRITTEN, censor: 'struck out' },
  }, target)
  const line = (lineLevel: keyof Log) => (event: string, fields: LogFields = {}) => logger[lineLevel](fields, event)
  return { debug: line('debug'), info: line('info'), warn: line('warn'), error: line('error') }
}
