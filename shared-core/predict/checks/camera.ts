import { syncVerdict, tailLossStops } from '../../exposure/shutter.ts'
import { formatShutter } from '../../plan/entry/camera.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import { amountText, type Check } from './check.ts'

/** Room light further under the aperture than this does not show (common practice, no source). */
const AMBIENT_UNDER_APERTURE_STOPS = -5
/** From here on it deserves a test frame: the deepest channel of a coloured area lies well under what the meter says. */
const AMBIENT_WORTH_A_FRAME_STOPS = -6
const AMBIENT_UNDER_DARKEST_STOPS = 3
/** Diffraction softens past this (common practice, no source). */
const SMALLEST_APERTURE = 16
/** Nose to ear, front to back, on an adult head: the least depth a portrait needs. ANSUR II head length p50 is 0.19-0.20 m. */
const NOSE_TO_EAR_METRES = 0.12

export const ambient: Check = ({ measured }) => {
  const level = measured.ambient.stops
  if (level === null) return []
  const coloured = measured.lights.filter((light) => light.on && !light.gel.clear && light.level.stops !== null)
  const darkest = coloured.reduce<{ stops: number; letter: string } | null>(
    (found, light) => (found === null || light.level.stops! < found.stops ? { stops: light.level.stops!, letter: light.letter } : found), null)
  const underDarkest = darkest === null ? Infinity : darkest.stops - level
  const overAperture = level > AMBIENT_UNDER_APERTURE_STOPS
  const overDarkest = underDarkest < AMBIENT_UNDER_DARKEST_STOPS
  if (level <= AMBIENT_WORTH_A_FRAME_STOPS && !overDarkest) return []
  return [{
    key: 'ambient:room',
    rule: 'ambient',
    severity: overAperture || overDarkest ? 'look' : 'note',
    message: overDarkest && darkest
      ? `Room light is at ${formatStops(level)}, only ${amountText(underDarkest)} under ${darkest.letter}'s colour`
      : overAperture
        ? `Room light is at ${formatStops(level)}: it greys the shadows`
        : `Room light is at ${formatStops(level)}: near enough to show in the deepest colour`,
    action: 'Turn the house lights off, or lower the ISO and raise the flash; then fire a frame with the flashes off: it must be black',
    value: overDarkest ? underDarkest : level,
    threshold: overDarkest ? AMBIENT_UNDER_DARKEST_STOPS : AMBIENT_UNDER_APERTURE_STOPS,
    unit: 'stops',
    about: ['room'],
  }]
}

/** A focal-plane shutter shows the whole frame only at or below its sync speed; radio triggers need a notch more. */
export const sync: Check = ({ look: { camera } }) => {
  const { cutsBand, radioDoubtful, shortestSafeSeconds: needed } =
    syncVerdict(camera.shutterSeconds, camera.syncSeconds, camera.radioTrigger)
  if (!cutsBand) {
    if (!radioDoubtful) return []
    return [{
      key: 'sync:camera',
      rule: 'sync',
      severity: 'note',
      message: `${formatShutter(camera.shutterSeconds)} is at the sync limit and a radio trigger adds delay: a dark edge is possible`,
      action: `Use ${formatShutter(needed)} or slower, or test a frame for a dark edge`,
      value: 1 / camera.shutterSeconds,
      threshold: 1 / needed,
      unit: '1/s',
      about: ['camera'],
    }]
  }
  return [{
    key: 'sync:camera',
    rule: 'sync',
    severity: 'stop',
    message: `${formatShutter(camera.shutterSeconds)} is shorter than the sync limit ${formatShutter(camera.syncSeconds)}: part of the frame stays dark`,
    action: `Use ${formatShutter(needed)} or slower`,
    value: 1 / camera.shutterSeconds,
    threshold: 1 / camera.syncSeconds,
    unit: '1/s',
    about: ['camera'],
  }]
}

/** A shutter shorter than t0.1 cuts the tail of the flash. */
export const flashDuration: Check = ({ look: { camera }, measured }) =>
  measured.lights.filter((light) => light.on && light.t01Seconds > camera.shutterSeconds).map((light) => ({
    key: `flash-duration:${light.id}`,
    rule: 'flash-duration' as const,
    severity: 'note' as const,
    message: `${light.letter}'s flash (t0.1 ${formatShutter(light.t01Seconds)}) is longer than the shutter: ` +
      `its tail is cut, ${amountText(-tailLossStops(light.t01Seconds, camera.shutterSeconds))} stop lost`,
    action: `Use 1/${Math.max(1, Math.floor(1 / light.t01Seconds))} or slower, or run ${light.letter} lower and nearer`,
    value: light.t01Seconds,
    threshold: camera.shutterSeconds,
    unit: 's',
    about: [light.id],
  }))

export const aperture: Check = ({ look: { camera } }) =>
  camera.fNumber <= SMALLEST_APERTURE * 1.01 ? [] : [{
    key: 'aperture:camera',
    rule: 'aperture',
    severity: 'note',
    message: `f/${camera.fNumber} is past f/${SMALLEST_APERTURE}: diffraction softens the picture`,
    action: 'Open up and lower the ISO or the powers',
    value: camera.fNumber,
    threshold: SMALLEST_APERTURE,
    unit: 'f-number',
    about: ['camera'],
  }]

export const depthOfField: Check = ({ measured: { depthOfField: depth } }) =>
  depth.totalMetres === null || depth.totalMetres >= NOSE_TO_EAR_METRES ? [] : [{
    key: 'depth-of-field:camera',
    rule: 'depth-of-field',
    severity: 'note',
    message: `Sharp over ${Math.round(depth.totalMetres * 100)} cm: less than nose to ear`,
    action: 'Stop down, or step back',
    value: depth.totalMetres,
    threshold: NOSE_TO_EAR_METRES,
    unit: 'm',
    about: ['camera'],
  }]
