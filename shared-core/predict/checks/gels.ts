import type { Look } from '../../plan/schema/look.ts'
import { changeLight, setGels } from '../../plan/edits/lights.ts'
import { sameJson } from '../../plan/edits/changing.ts'
import { leastCut, shortOf } from '../gelOpening.ts'
import type { LightPrediction } from '../prediction.ts'
import type { Snag } from '../snag.ts'
import { amountText, centimetresText, mendBy, type Check } from './check.ts'
import { hueBetweenDegrees } from './hueBetween.ts'
import { powersBy } from './lightMends.ts'

/** Hues further apart than this mix to grey or band where they meet on a curve (common practice, no source). */
const OPPOSITE_DEGREES = 150
/** One of the two should lie this far under the other (common practice, no source). */
const APART_STOPS = 1.5
/** Colour deeper than this does not show where two meet (common practice, no source). */
const DEEPEST_SEEN_STOPS = -3.5
/** Between best and worst channel: paler sheets have no hue to clash with. */
const COLOURED_STOPS = 1.5

/** One sheet, cut or whole, covers what it is put over. */
export const gelCut: Check = ({ plan, look, measured: { lookId } }) =>
  Object.entries(look.lights).flatMap(([id, light]): Snag[] => {
    const cut = leastCut(plan.modifiers[light.modifierId], light.gelPlace)
    const missing = Math.max(0, ...light.gelIds.map((gelId) => {
      const gel = plan.gels[gelId]
      return gel ? shortOf(cut, { widthMetres: gel.sheetWidthMetres, heightMetres: gel.sheetHeightMetres }) : 0
    }))
    if (missing <= 0) return []
    return [{
      key: `gel-cut:${id}`,
      rule: 'gel-cut',
      severity: 'stop',
      message: `${light.letter}’s sheet is ${centimetresText(missing)} short: it needs ${centimetresText(cut.widthMetres)} × ${centimetresText(cut.heightMetres)}`,
      action: light.gelPlace === 'over-the-front'
        ? 'Put the gel at the head, or join sheets where no join shows'
        : 'Join two sheets, or take a larger one',
      value: missing,
      threshold: 0,
      unit: 'm short',
      about: [id],
      ...mendBy(`Gel at ${light.letter}’s head`, changeLight(plan, lookId, id, { gelPlace: 'at-the-head' })),
    }]
  })

/** Two sheets that share a name on two lights, but differ in curve or batch, or nobody knows. */
export const sameNameGel: Check = ({ plan, look, measured: { lookId } }) => {
  const uses = Object.entries(look.lights).filter(([, light]) => light.on).flatMap(([lightId, light]) =>
    light.gelIds.flatMap((gelId) => {
      const gel = plan.gels[gelId]
      return gel ? [{ lightId, light, gelId, gel, name: gel.name.trim().toLowerCase() }] : []
    }))
  const told = new Set<string>()
  return uses.flatMap((use): Snag[] => {
    const first = uses.find((other) => other.name === use.name)!
    if (first.gelId === use.gelId || first.lightId === use.lightId || told.has(use.lightId)) return []
    const isSameCurve = sameJson(first.gel.source, use.gel.source)
    const isSameBatch = first.gel.batch === use.gel.batch && use.gel.batch !== ''
    if (isSameCurve && isSameBatch) return []
    told.add(use.lightId)
    const gelIds = use.light.gelIds.map((id) => (id === use.gelId ? first.gelId : id))
    return [{
      key: `same-name-gel:${first.lightId}:${use.lightId}`,
      rule: 'same-name-gel',
      severity: 'look',
      message: `${first.light.letter} and ${use.light.letter} carry two different “${use.gel.name}”${isSameCurve ? ': other batches' : ''}`,
      action: 'Cut both from one sheet, or measure that they match',
      value: 2,
      threshold: 1,
      unit: 'kinds of one name',
      about: [use.lightId, first.lightId],
      ...mendBy(`${use.light.letter} from ${first.light.letter}’s sheet`, setGels(plan, lookId, use.lightId, gelIds)),
    }]
  })
}

/** Two opposite hues at nearly one level on one curved part of the subject. */
export const oppositeHues: Check = (view) => {
  const { measured, look } = view
  const coloured = measured.lights.filter((light) => light.on && isColoured(light))
  return pairsOf(coloured).flatMap(([one, other]): Snag[] => {
    const degrees = hueBetweenDegrees(one.gel.onWhite, other.gel.onWhite)
    if (degrees === null || degrees < OPPOSITE_DEGREES) return []
    const worst = measured.areas.filter(({ material, inFrame }) => material === 'skin' && inFrame).flatMap((area) => {
      const stopsOf = (id: string) => area.byLight.find(({ lightId }) => lightId === id)?.stops ?? -Infinity
      const [a, b] = [stopsOf(one.id), stopsOf(other.id)]
      return Math.min(a, b) < DEEPEST_SEEN_STOPS ? [] : [{ area, apart: Math.abs(a - b), under: a < b ? one : other }]
    }).sort((a, b) => a.apart - b.apart)[0]
    if (!worst || worst.apart >= APART_STOPS) return []
    // A tenth over: the head rounds to its own steps.
    const missing = APART_STOPS - worst.apart + 0.1
    return [{
      key: `opposite-hues:${one.id}:${other.id}`,
      rule: 'opposite-hues',
      severity: 'look',
      message: `${one.letter} and ${other.letter} are opposite hues ${amountText(worst.apart)} apart on the ${worst.area.label}: grey or banding where they meet`,
      action: `Darken ${worst.under.letter} by ${amountText(missing)}, soften the overlap, or flag one off`,
      value: worst.apart,
      threshold: APART_STOPS,
      unit: 'stops apart',
      about: [worst.under.id, worst.area.id],
      ...mendBy(`Darken ${letterOf(look, worst.under.id)} by ${amountText(missing)}`, powersBy(view, [worst.under.id], -missing)),
    }]
  })
}

function isColoured({ gel }: LightPrediction): boolean {
  return !gel.clear && gel.whiteOutStops - gel.strongestChannelLossStops > COLOURED_STOPS
}

function pairsOf<Thing>(things: readonly Thing[]): readonly (readonly [Thing, Thing])[] {
  return things.flatMap((one, index) => things.slice(index + 1).map((other) => [one, other] as const))
}

function letterOf(look: Look, lightId: string): string {
  return look.lights[lightId]?.letter ?? ''
}
