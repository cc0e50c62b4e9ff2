import { z } from 'zod'
import { readKept, writeKept } from '../connection/kept.ts'
import { seatInfoSchema, type SeatInfo } from '../connection/seat.ts'
import type { Units } from './board.ts'

/** What this device remembers of its person. */
const keys = { name: 'halfstop.name', units: 'halfstop.units', theme: 'halfstop.theme', seats: 'halfstop.seats', numbers: 'halfstop.numbers' } as const

const MOST_SEATS = 30

const unitsSchema = z.enum(['metric', 'imperial'])
const themeSchema = z.enum(['studio', 'torch', 'bright'])
const visitedSchema = z.array(seatInfoSchema.extend({ title: z.string() }))

/** A seat this device has sat on, with the job's title as last seen. */
export type VisitedSeat = SeatInfo & { readonly title: string }

export const remembered = {
  name: () => readKept(keys.name, z.string(), ''),
  keepName: (name: string) => writeKept(keys.name, name),
  units: () => readKept(keys.units, unitsSchema, usualUnits()),
  keepUnits: (units: Units) => writeKept(keys.units, units),
  theme: () => readKept(keys.theme, themeSchema, 'studio'),
  keepTheme: (theme: z.infer<typeof themeSchema>) => writeKept(keys.theme, theme),
  /** Whether a client asked for the board with its numbers. */
  numbersShown: () => readKept(keys.numbers, z.boolean(), false),
  keepNumbersShown: (shown: boolean) => writeKept(keys.numbers, shown),
  /** Latest first. */
  seats: (): readonly VisitedSeat[] => readKept(keys.seats, visitedSchema, []),
  keepSeat(seat: VisitedSeat): void {
    const others = remembered.seats().filter((one) => one.seatId !== seat.seatId)
    writeKept(keys.seats, [seat, ...others].slice(0, MOST_SEATS))
  },
  forgetSeat: (seatId: string) => writeKept(keys.seats, remembered.seats().filter((one) => one.seatId !== seatId)),
}

/** Feet and inches where the device's language says so. */
function usualUnits(): Units {
  return typeof navigator !== 'undefined' && navigator.language === 'en-US' ? 'imperial' : 'metric'
}
