import { formatFNumber } from '../../plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter } from '../../plan/entry/camera.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import type { Prediction } from '../../predict/prediction.ts'

/** How the files are developed so that they look as agreed: white balance, white point, contrast, black. */
export function recipeText(plan: Plan, lookId: string, { background }: Prediction): string {
  const { name, camera, finish } = plan.looks[lookId]!
  const percent = (share: number): string => `${Number((share * 100).toFixed(1))} %`
  return [
    `Recipe for “${name}”`,
    '',
    `White balance: ${formatKelvin(camera.whiteBalanceKelvin)}, ${camera.whiteBalanceFixed ? 'fixed in camera. Keep it: balancing again shifts every gel at once.' : 'the camera was left to judge: set this by hand on every file first.'}`,
    'Do not use an automatic balance and do not pick grey in a gelled place. A grey card is only grey by the clear light alone.',
    `Taken at ${formatFNumber(camera.fNumber)}, ${formatShutter(camera.shutterSeconds)}, ${formatIso(camera.isoSpeed)}, ${camera.focalLengthMillimetres} mm.`,
    '',
    `Exposure: ${finish.exposureStops === 0 ? 'as shot' : `${formatStops(finish.exposureStops)} stops`}.`,
    `White point: ${finish.whitePointStops === 0 ? 'as shot' : `pull white down by ${formatStops(finish.whitePointStops)} stops: what was so much short of white becomes white`}.`,
    `Contrast: ${finish.contrast === 0 ? 'as shot' : `${finish.contrast > 0 ? 'up' : 'down'} by ${percent(Math.abs(finish.contrast))} of the slope at mid-grey`}.`,
    `Black point: ${finish.blackPoint === 0 ? 'as shot' : `${percent(finish.blackPoint)} of full scale becomes black`}.`,
    ...(background.whitePointPullStops !== null && background.verdict !== 'white' && background.whitePointPullStops > 0
      ? [`If a corner of the background is not white: a white point pull of ${formatStops(background.whitePointPullStops)} would clear the worst one. Much over half a stop eats skin: mask it.`] : []),
    '',
    'These are the figures of the board that the picture was agreed on. Another program names and shapes them otherwise: match the Frame by eye.',
    '',
  ].join('\n')
}

/** Which frames by clear light alone were planned, and what they are for. */
export function cleanPlatesText(plan: Plan, lookId: string, { areas, lights }: Prediction): string {
  const look = plan.looks[lookId]!
  const clear = lights.filter(({ on, gel }) => on && gel.clear).map(({ letter }) => letter)
  const lines = Object.entries(look.mustReadTrue).map(([id, { cleanPlatePlanned }]) => {
    const label = areas.find((area) => area.id === id)?.label ?? look.points[id]?.label ?? id
    return cleanPlatePlanned
      ? `- ${label}: a frame by ${clear.length === 0 ? 'clear light' : clear.join(' and ')} alone, same place, same pose. Take hue and saturation from it, light and shade from the picture.`
      : `- ${label}: no clean plate was planned. Its true colour has to be known from elsewhere.`
  })
  return [
    `Clean plates of “${look.name}”`, '',
    ...(lines.length === 0 ? ['None was planned: nothing in this look was marked as having to read true.'] : lines),
    '', 'File names: ______________________', '',
  ].join('\n')
}
