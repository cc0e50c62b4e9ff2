import { formatFNumber, parseFNumber } from '../../../shared-core/plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter, parseIso, parseKelvin, parseShutter } from '../../../shared-core/plan/entry/camera.ts'
import type { NumberFieldProps } from '../../controls/NumberField.tsx'

type Entry = Pick<NumberFieldProps, 'label' | 'format' | 'parse'> & { readonly step: NonNullable<NumberFieldProps['step']> }

/** Full steps of a camera's dials in thirds of a stop, as engraved. ISO speeds: ISO 12232; common practice for shutters. */
const engravedIso = [25, 32, 40, 50, 64, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000, 10000, 12800, 25600, 51200, 102400]
const engravedShutter = [
  30, 25, 20, 15, 13, 10, 8, 6, 5, 4, 3.2, 2.5, 2, 1.6, 1.3, 1, 0.8, 0.6, 0.5, 0.4, 0.3,
  ...[4, 5, 6, 8, 10, 13, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 160, 200, 250, 320, 400, 500, 640, 800, 1000, 1250, 1600, 2000, 2500, 3200, 4000, 5000, 6400, 8000].map((part) => 1 / part),
]

/** How each number of the camera line is read, written and stepped. */
export const cameraEntries = {
  fNumber: { label: 'Aperture', format: formatFNumber, parse: parseFNumber, step: stepFNumber },
  shutterSeconds: {
    label: 'Shutter', format: formatShutter, parse: parseShutter,
    step: (value, direction, size) => alongDial(engravedShutter, value, direction * (size === 'alt' ? 3 : 1), (a, b) => b - a),
  },
  isoSpeed: {
    label: 'Film speed', format: formatIso, parse: parseIso,
    step: (value, direction, size) => alongDial(engravedIso, value, direction * (size === 'alt' ? 3 : 1), (a, b) => a - b),
  },
  whiteBalanceKelvin: {
    label: 'White balance', format: formatKelvin, parse: parseKelvin,
    step: (value, direction, size) => Math.round(value / 50) * 50 + direction * { plain: 50, shift: 250, alt: 1000 }[size],
  },
} as const satisfies Readonly<Record<string, Entry>>

/** A tenth of a stop, a third, or a whole one; on the tenths where the meter's display has them. */
function stepFNumber(fNumber: number, direction: 1 | -1, size: 'plain' | 'shift' | 'alt'): number {
  const stops = 2 * Math.log2(fNumber) + direction * { plain: 0.1, shift: 1 / 3, alt: 1 }[size]
  const onScale = size === 'plain' ? Math.round(stops * 10) / 10 : stops
  return Math.min(Math.max(2 ** (onScale / 2), 0.7), 128)
}

/** The engraved value some clicks on; from between two clicks, the next one in that direction counts as the first. */
function alongDial(dial: readonly number[], value: number, clicks: number, compare: (a: number, b: number) => number): number {
  const near = (a: number, b: number) => Math.abs(a - b) <= 0.01 * b
  const here = dial.findIndex((engraved) => near(value, engraved) || compare(engraved, value) > 0)
  const from = here === -1 ? dial.length : here
  const onClick = from < dial.length && near(value, dial[from] ?? 0)
  const to = from + clicks - (onClick || clicks < 0 ? 0 : 1)
  return dial[Math.min(Math.max(to, 0), dial.length - 1)] ?? value
}
