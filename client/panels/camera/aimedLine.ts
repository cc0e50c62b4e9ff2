import type { Camera } from '../../../shared-core/plan/schema/look.ts'
import { formatLength } from '../../../shared-core/plan/entry/length.ts'
import type { Units } from '../../session/board.ts'
import { tiltDegreesOf } from '../beam.ts'

/** "1.42 m up, tilted 2.7° up": how a camera stands, in a line. */
export function aimedLine(camera: Pick<Camera, 'place' | 'aim'>, units: Units): string {
  const tilt = tiltDegreesOf(camera.place, camera.aim)
  const tilted = Math.abs(tilt) < 0.05 ? 'level' : `tilted ${Math.abs(tilt).toFixed(1)}° ${tilt > 0 ? 'up' : 'down'}`
  return `${formatLength(camera.place.zMetres, units)} up, ${tilted}`
}
