import { formatStops } from '../plan/entry/stops.ts'
import type { AreaPrediction, Prediction } from '../predict/prediction.ts'
import type { Aim } from './aim.ts'
import type { Outcome } from './answer.ts'
import { lookOf, type Draft } from './draft.ts'
import { isMissMet, missOf, sheetsLacking, shortfallOf, withHelpers, type ClearChannels } from './judge.ts'
import { modelOf } from './modelOf.ts'
import { gelNames, wantWords } from './wantWords.ts'

/** How every want comes out in a draft, by its real prediction. */
export function outcomesOf(aims: readonly Aim[], draft: Draft, prediction: Prediction, clear: ClearChannels): Outcome[] {
  const readings = modelOf(prediction, lookOf(draft).meter).asPredicted()
  return aims.map((aim): Outcome => {
    const miss = missOf(aim, readings, draft, clear)
    const isMet = isMissMet(aim, miss, draft)
    return { want: aim.want, isMet, miss: tidy(miss), words: wordsOf(aim, miss, isMet, draft, prediction) }
  })
}

/** How far all of them together are from being met, weighed as stops. */
export function totalShortfall(aims: readonly Aim[], outcomes: readonly Outcome[], draft: Draft): number {
  return aims.reduce((sum, aim, i) => sum + shortfallOf(aim, outcomes[i]!.miss, draft), 0)
}

const tidy = (miss: number): number => Math.round(miss * 1e6) / 1e6 || 0

function wordsOf({ want, lightId }: Aim, miss: number, isMet: boolean, draft: Draft, prediction: Prediction): string {
  const area = 'areaId' in want ? prediction.areas.find(({ id }) => id === want.areaId) : undefined
  switch (want.kind) {
    case 'area-level': return `${area?.label ?? want.areaId} ${formatStops(want.stops + miss)} (wanted ${formatStops(want.stops)})`
    case 'light-level': {
      const light = prediction.lights.find(({ id }) => id === want.lightId)
      if (!light) return 'that light is no longer in the look'
      if (!light.on) return `${light.letter} is switched off`
      const letters = withHelpers(want.lightId, draft).map((id) => lookOf(draft).lights[id]?.letter).join(' and ')
      return `${letters} ${formatStops(want.stops + miss)} (wanted ${formatStops(want.stops)})`
    }
    case 'area-gel': {
      const letter = lightId === null ? null : lookOf(draft).lights[lightId]?.letter
      if (!letter) return `no light that is on reaches the ${area?.label ?? want.areaId}`
      const names = gelNames(want.gelIds, draft.plan)
      if (sheetsLacking(want.gelIds, draft) > 0) return `${letter} with ${names}: the drawer lacks ${miss === 1 ? 'a sheet' : `${miss} sheets`}`
      if (want.stops === null) return isMet ? `${letter} carries ${names}` : `${letter} does not carry ${names}`
      return `${letter} with ${names} at ${formatStops(want.stops + miss)} on the ${area?.label ?? want.areaId} (wanted ${formatStops(want.stops)})`
    }
    case 'area-colour': return `${area?.label ?? want.areaId} ${colourWordsOf(area)}, ${miss.toFixed(1)} from the colour wanted`
    case 'white-behind':
      return isMet ? `white behind, ${Math.max(0, -miss).toFixed(1)} in hand` : `${miss.toFixed(1)} short of white behind`
    case 'reads-true':
      return `${area?.label ?? want.areaId} ${isMet ? 'reads true' : 'does not read true'}: ${Math.abs(miss).toFixed(1)} from clear light`
    case 'aperture':
    case 'iso': return wantWords(want, draft.plan, lookOf(draft))
  }
}

function colourWordsOf(area: AreaPrediction | undefined): string {
  return area ? area.colour.words : 'unseen'
}
