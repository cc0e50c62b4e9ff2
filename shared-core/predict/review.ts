import type { Caution } from './caution.ts'
import type { Severity, Snag } from './snag.ts'
import { haze, unevenBackground, whiteOut, whiteTooHot } from './checks/background.ts'
import { ambient, aperture, depthOfField, flashDuration, sync } from './checks/camera.ts'
import { cautionsOf } from './checks/cautions.ts'
import type { Check, CheckView } from './checks/check.ts'
import { backdropNotFilling, frontNotFilling, inFrame, lensSeesLight, outsideRoom } from './checks/fit.ts'
import { channelClips, fallOff, gelHeat, gelLevel, headNearFace, kitShort } from './checks/heads.ts'
import { outOfPower, tooStrong } from './checks/power.ts'
import { spill } from './checks/spill.ts'

const checks: readonly Check[] = [
  outOfPower, tooStrong, outsideRoom, headNearFace, gelHeat, sync, frontNotFilling, backdropNotFilling, whiteOut, whiteTooHot,
  unevenBackground, inFrame, lensSeesLight, spill, haze, ambient, channelClips, flashDuration, aperture, depthOfField, gelLevel, fallOff, kitShort,
]

const loudness: Record<Severity, number> = { stop: 0, look: 1, note: 2 }

/** What is not quiet about a look, loudest first, and the usual care for what stands in it. */
export function review(view: CheckView): { snags: Snag[]; cautions: Caution[] } {
  const snags = checks.flatMap((check) => check(view))
  // Sorting is stable: within one severity the order above stands.
  snags.sort((a, b) => loudness[a.severity] - loudness[b.severity])
  return { snags, cautions: cautionsOf(view) }
}
