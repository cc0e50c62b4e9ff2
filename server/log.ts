import type { Settings } from './settings.ts'

const LEVELS = ['debug', 'info', 'warn', 'error', 'none'] as const
type Level = Exclude<(typeof LEVELS)[number], 'none'>

/** What may stand beside an event. Never a key, a secret, a person's name or a document's content. */
export type LogFields = Readonly<Record<string, string | number | boolean>>

export interface Log {
  debug(event: string, fields?: LogFields): void
  info(event: string, fields?: LogFields): void
  warn(event: string, fields?: LogFields): void
  error(event: string, fields?: LogFields): void
}

/** One line an event: time, level, event in words, then `name=value` pairs that a machine can take apart again. */
export function makeLog(level: Settings['LOG_LEVEL'], write: (line: string) => void = (line) => console.log(line)): Log {
  const least = LEVELS.indexOf(level)
  const line = (lineLevel: Level) => (event: string, fields: LogFields = {}) => {
    if (LEVELS.indexOf(lineLevel) < least) return
    const pairs = Object.entries(fields).map(([name, value]) => ` ${name}=${JSON.stringify(value)}`).join('')
    write(`${new Date().toISOString()} ${lineLevel.padEnd(5)} ${event}${pairs}`)
  }
  return { debug: line('debug'), info: line('info'), warn: line('warn'), error: line('error') }
}
