import { formatFNumber } from '../../../shared-core/plan/entry/aperture.ts'
import { formatIso, formatKelvin, formatShutter } from '../../../shared-core/plan/entry/camera.ts'
import type { Camera, Look } from '../../../shared-core/plan/schema/look.ts'
import type { LockedLight } from './useLockedLights.ts'

/** "f/8 · 1/125 s · ISO 200 · 5500 K" */
export function cameraWords({ fNumber, shutterSeconds, isoSpeed, whiteBalanceKelvin }: Camera): string {
  return [formatFNumber(fNumber), formatShutter(shutterSeconds), formatIso(isoSpeed), formatKelvin(whiteBalanceKelvin)].join(' · ')
}

/** The lights that burn by their letters, each in a line with its power. */
export function LightLines({ look, lights }: { readonly look: Look; readonly lights: readonly LockedLight[] }) {
  const burning = lights.filter(({ on }) => on).sort((a, b) => (a.letter < b.letter ? -1 : 1))
  return (
    <ul className="lock-card-lights">
      {burning.map(({ id, letter, summary }) => <li key={id}><strong>{letter}</strong> {summary} · {Math.round(look.lights[id]?.energyJoules ?? 0)} Ws</li>)}
    </ul>
  )
}
