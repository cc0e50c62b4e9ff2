import { syncVerdict, tailLossStops } from '../../exposure/shutter.ts'
import { formatShutter } from '../../plan/entry/camera.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import { changeRoom } from '../../plan/edits/job.ts'
import { changeCamera } from '../../plan/edits/look.ts'
import { stopsFromTimes, timesFromStops } from '../../arithmetic/portable.ts'
import { amountText, mendBy, type Check, type CheckView } from './check.ts'

/** Room light further under the aperture than this does not show (common practice, no source). */
const AMBIENT_UNDER_APERTURE_STOPS = -5
/** From here on it deserves a test frame: the deepest channel of a coloured area lies well under what the meter says. */
const AMBIENT_WORTH_A_FRAME_STOPS = -6
const AMBIENT_UNDER_DARKEST_STOPS = 3
/** Diffraction softens past this (common practice, no source). */
const SMALLEST_APERTURE = 16
/** As engraved on lenses (ISO 517). */
const FULL_APERTURES = [1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16]
/** Nose to ear, front to back, on an adult head: the least depth a portrait needs. ANSUR II head length p50 is 0.19-0.20 m. */
const NOSE_TO_EAR_METRES = 0.12

export const ambient: Check = ({ plan, measured }) => {
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
    key: overDarkest ? 'ambient-colour:room' : 'ambient:room',
    rule: overDarkest ? 'ambient-colour' : 'ambient',
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
    ...mendBy('House lights off', changeRoom(plan, { ambientLux: 0 })),
  }]
}

/** A focal-plane shutter shows the whole frame only at or below its sync speed; radio triggers need a notch more. */
export const sync: Check = ({ plan, look: { camera }, measured: { lookId } }) => {
  const { cutsBand, radioDoubtful, shortestSafeSeconds: needed } =
    syncVerdict(camera.shutterSeconds, camera.syncSeconds, camera.radioTrigger)
  const slower = mendBy(`Shutter ${formatShutter(needed)}`, changeCamera(plan, lookId, { shutterSeconds: needed }))
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
      ...slower,
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
    ...slower,
  }]
}

/** A shutter shorter than t0.1 cuts the tail of the flash. */
export const flashDuration: Check = ({ plan, look: { camera }, measured }) =>
  measured.lights.filter((light) => light.on && light.t01Seconds > camera.shutterSeconds).map((light) => ({
    key: `flash-duration:${light.id}`,
    rule: 'flash-duration' as const,
    severity: 'note' as const,
    message: `${light.letter}'s flash (t0.1 ${formatShutter(light.t01Seconds)}) is longer than the shutter: ` +
      `its tail is cut, ${amountText(-tailLossStops(light.t01Seconds, camera.shutterSeconds))} stop lost`,
    action: `Use 1/${wholeSpeed(light.t01Seconds)} or slower, or run ${light.letter} lower and nearer`,
    value: light.t01Seconds,
    threshold: camera.shutterSeconds,
    unit: 's',
    about: [light.id],
    ...mendBy(`Shutter 1/${wholeSpeed(light.t01Seconds)}`, changeCamera(plan, measured.lookId, { shutterSeconds: 1 / wholeSpeed(light.t01Seconds) })),
  }))

export const aperture: Check = (view) => {
  const { camera } = view.look
  return camera.fNumber <= SMALLEST_APERTURE * 1.01 ? [] : [{
    key: 'aperture:camera',
    rule: 'aperture',
    severity: 'note',
    message: `f/${camera.fNumber} is past f/${SMALLEST_APERTURE}: diffraction softens the picture`,
    action: 'Open up and lower the ISO or the powers',
    value: camera.fNumber,
    threshold: SMALLEST_APERTURE,
    unit: 'f-number',
    about: ['camera'],
    ...atSameExposure(view, SMALLEST_APERTURE),
  }]
}

export const depthOfField: Check = (view) => {
  const { depthOfField: depth } = view.measured
  return depth.totalMetres === null || depth.totalMetres >= NOSE_TO_EAR_METRES ? [] : [{
    key: 'depth-of-field:camera',
    rule: 'depth-of-field',
    severity: 'note',
    message: `Sharp over ${Math.round(depth.totalMetres * 100)} cm: less than nose to ear`,
    action: 'Stop down, or step back',
    value: depth.totalMetres,
    threshold: NOSE_TO_EAR_METRES,
    unit: 'm',
    about: ['camera'],
    ...atSameExposure(view, deepEnough(view.look.camera.fNumber, NOSE_TO_EAR_METRES / depth.totalMetres)),
  }]
}

/** A camera that judges white for itself balances every gelled frame otherwise. */
export const whiteBalance: Check = ({ plan, look, measured: { lookId } }) =>
  look.camera.whiteBalanceFixed ? [] : [{
    key: 'white-balance:camera',
    rule: 'white-balance',
    severity: 'note',
    message: 'The camera chooses its own white balance: gels shift from frame to frame',
    action: `Set a fixed ${look.camera.whiteBalanceKelvin} K`,
    value: 1,
    threshold: 0,
    unit: 'not fixed',
    about: ['camera'],
    ...mendBy(`Fix ${look.camera.whiteBalanceKelvin} K`, changeCamera(plan, lookId, { whiteBalanceFixed: true })),
  }]

/** Another aperture with the ISO that keeps flash and room light where they are. */
function atSameExposure({ plan, look: { camera }, measured: { lookId } }: CheckView, fNumber: number) {
  const stops = Math.round(6 * stopsFromTimes(fNumber / camera.fNumber)) / 3
  const isoSpeed = Math.round(camera.isoSpeed * timesFromStops(stops))
  return mendBy(`f/${fNumber} at ISO ${isoSpeed}`, changeCamera(plan, lookId, { fNumber, isoSpeed }))
}

/** Depth grows about in proportion to the f-number (thin lens, subject well inside the hyperfocal distance). */
function deepEnough(fNumber: number, times: number): number {
  return FULL_APERTURES.find((full) => full >= fNumber * times) ?? SMALLEST_APERTURE
}

/** The denominator of the nearest slower shutter that is one over a whole number. */
function wholeSpeed(seconds: number): number {
  return Math.max(1, Math.floor(1 / seconds))
}
