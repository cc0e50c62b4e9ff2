import { formatIso, formatKelvin, formatShutter } from '../plan/entry/camera.ts'
import type { Look } from '../plan/schema/look.ts'
import type { Plan } from '../plan/schema/plan.ts'

/** What is written into a saved picture, by the keywords of the PNG specification (third edition, 11.3.3.2). */
export function pictureText(plan: Plan, look: Look): Readonly<Record<string, string>> {
  const { camera, finish } = look
  return {
    Title: latin(`${plan.title}: ${look.name}`),
    Description: 'Predicted picture. A plan, not a photograph.',
    Software: 'Halfstop',
    Comment: latin([
      `f/${camera.fNumber}`, formatShutter(camera.shutterSeconds), formatIso(camera.isoSpeed), formatKelvin(camera.whiteBalanceKelvin),
      `finish: exposure ${finish.exposureStops}, contrast ${finish.contrast}, white point ${finish.whitePointStops}, black point ${finish.blackPoint}`,
    ].join('; ')),
  }
}

/** Text chunks hold Latin-1 only. */
function latin(text: string): string {
  return text.replaceAll(/[^\x20-\x7e\xa0-\xff]/gu, '?')
}

/** Height of a picture of the given width at the camera's crop, in whole pixels. */
export function pictureHeight(look: Look, width: number): number {
  return Math.max(1, Math.round((width * look.camera.sensorHeightMillimetres) / look.camera.sensorWidthMillimetres))
}
