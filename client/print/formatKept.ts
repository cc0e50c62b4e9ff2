import { z } from 'zod'
import { readKept, writeKept } from '../connection/kept.ts'
import type { Units } from '../session/board.ts'
import type { FormatId } from './paper.ts'

const formatKey = 'halfstop.paper'
const formatSchema = z.enum(['a4', 'letter'])

/** The paper this device last printed on; before that, what is usual where people measure so. */
export function keptFormat(units: Units): FormatId {
  return readKept(formatKey, formatSchema, units === 'imperial' ? 'letter' : 'a4')
}

export function keepFormat(format: FormatId): void {
  writeKept(formatKey, format)
}
