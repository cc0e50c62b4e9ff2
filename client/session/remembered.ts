import { z } from 'zod'
import { seatInfoSchema, type SeatInfo } from '../connection/seat.ts'
import type { Units } from './board.ts'

/**
 * What this device remembers of its person. Everything here is a convenience: a browser that keeps nothing (private
 * windows, full storage) loses no more than that, so every failure falls back without a word.
 */
const keys = { name: 'halfstop.name', units: 'halfstop.units', theme: 'halfstop.theme', seats: 'halfstop.seats' } as const

const MOST_SEATS = 30

const unitsSchema = z.enum(['metric', 'imperial'])
const themeSchema = z.enum(['studio', 'torch', 'bright'])
const visitedSchema = z.array(seatInfoSchema.extend({ title: z.string() }))

/** A seat this device has sat on, with the job's title as last seen. */
export type VisitedSeat = SeatInfo & { readonly title: string }

export const remembered = {
  name: () => read(keys.name, z.string(), ''),
  keepName: (name: string) => write(keys.name, name),
  units: () => read(keys.units, unitsSchema, usualUnits()),
  keepUnits: (units: Units) => write(keys.units, units),
  theme: () => read(keys.theme, themeSchema, 'studio'),
  keepTheme: (theme: z.infer<typeof themeSchema>) => write(keys.theme, theme),
  /** Latest first. */
  seats: (): readonly VisitedSeat[] => read(keys.seats, visitedSchema, []),
  keepSeat(seat: VisitedSeat): void {
    const others = remembered.seats().filter((one) => one.seatId !== seat.seatId)
    write(keys.seats, [seat, ...others].slice(0, MOST_SEATS))
  },
  forgetSeat: (seatId: string) => write(keys.seats, remembered.seats().filter((one) => one.seatId !== seatId)),
}

/** Feet and inches where the device's language says so. */
function usualUnits(): Units {
  return typeof navigator !== 'undefined' && navigator.language === 'en-US' ? 'imperial' : 'metric'
}

function read<Value>(key: string, schema: z.ZodType<Value>, otherwise: Value): Value {
  try {
    const kept = localStorage.getItem(key)
    const parsed = kept === null ? null : schema.safeParse(JSON.parse(kept))
    return parsed?.success === true ? parsed.data : otherwise
  } catch {
    return otherwise
  }
}

function write(key: string, value: unknown): void {
  try {
    localStorage.setItem(key, JSON.stringify(value))
  } catch {
    // Remembering is a convenience; see above.
  }
}
