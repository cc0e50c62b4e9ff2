import { loudestFirst, partAccepted } from './acceptance.ts'
import type { Caution } from './caution.ts'
import type { AcceptedSnag, Snag } from './snag.ts'
import { haze, unevenBackground, whiteOut, whiteTooHot } from './checks/background.ts'
import { ambient, aperture, depthOfField, flashDuration, sync, whiteBalance } from './checks/camera.ts'
import { cautionsOf } from './checks/cautions.ts'
import type { Check, CheckView } from './checks/check.ts'
import { catchlights } from './checks/eyes.ts'
import { backdropNotFilling, frontNotFilling, inFrame, lensSeesLight, outsideRoom } from './checks/fit.ts'
import { gelCut, oppositeHues, sameNameGel } from './checks/gels.ts'
import { channelClips, fallOff, gelHeat, gelLevel, headNearFace, kitShort } from './checks/heads.ts'
import { headColour } from './checks/headColour.ts'
import { keyDistance, paperDistance, setUpOrder } from './checks/placing.ts'
import { outOfPower, tooStrong } from './checks/power.ts'
import { mustReadTrue } from './checks/product.ts'
import { safetyCable, sandbag, walkway } from './checks/rigging.ts'
import { spill } from './checks/spill.ts'
import { battery, circuitLoad } from './checks/supply.ts'

const checks: readonly Check[] = [
  outOfPower, tooStrong, outsideRoom, headNearFace, gelHeat, gelCut, circuitLoad, sandbag, safetyCable, walkway, sync,
  frontNotFilling, backdropNotFilling, whiteOut, whiteTooHot, unevenBackground, inFrame, lensSeesLight, mustReadTrue, spill,
  haze, ambient, channelClips, oppositeHues, sameNameGel, headColour, paperDistance, flashDuration, aperture, depthOfField,
  gelLevel, fallOff, keyDistance, catchlights, battery, whiteBalance, setUpOrder, kitShort,
]

/**
 * What is not quiet about a look, loudest and worst first; what of it somebody accepted; and the usual care for what
 * stands in it.
 */
export function review(view: CheckView): { snags: Snag[]; accepted: AcceptedSnag[]; cautions: Caution[] } {
  const found = checks.flatMap((check) => check(view))
  // Sorting is stable: between equals the order above stands.
  found.sort(loudestFirst)
  return { ...partAccepted(found, view.look), cautions: cautionsOf(view) }
}
