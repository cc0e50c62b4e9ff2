import { SlipFitter, type Fit, type SeenArea } from './fit.ts'
import { differencesOf, type AreaDifference } from './areaDifferences.ts'
import type { TestFrameModel } from './model.ts'
import { SLIP_OFTEN, type SlipKind } from './slips.ts'
import { amountWords, verdictWords } from './words.ts'

export type VerdictKind = 'all-well' | 'one-thing' | 'unsure' | 'more-than-one' | 'too-little'

export interface Suspect {
  readonly key: string
  readonly kind: SlipKind
  readonly lightIds: readonly string[]
  /** "C is about 1.0 stop low" */
  readonly words: string
  readonly action: string
  /** Of a light or the whole frame, in stops; of white balance, in mired; null where nothing is fitted. */
  readonly amount: number | null
  /** How likely among all that was tried, 0-1. */
  readonly likelihood: number
}

export interface TestFrameVerdict {
  readonly kind: VerdictKind
  /** "C is about 1.0 stop low, or C has violet twice." */
  readonly words: string
  /** The one thing to look at; empty when all is well. */
  readonly action: string
  /** Likeliest first; "nothing is wrong" is among them. */
  readonly suspects: readonly Suspect[]
  /** How many of the first suspects this photograph cannot tell apart. */
  readonly alike: number
  readonly differences: readonly AreaDifference[]
  /** Put down to the camera, and taken off the differences: its own picture style and exposure. */
  readonly camera: { readonly exposureStops: number; readonly contrast: number; readonly mired: number }
  /** About 1 when what the likeliest leaves is no more than the usual. */
  readonly misfit: number
}

/** Fewer areas than this cannot tell one light from another. */
const LEAST_AREAS = 5
/** The 99 % point of chi-square over its degrees of freedom at about 40 (chi-square table: 63.7 / 40). */
export const MOST_MISFIT = 1.6
/** "All well" needs to be this likely. */
const SURE = 0.8
/** Suspects this much less likely than the first are still said beside it. */
const ALIKE_SHARE = 1 / 10
const SUSPECTS_REFINED = 8
const [ROUNDS_TO_SCREEN, ROUNDS_TO_REFINE] = [3, 8]

/** Holds what a photograph shows against a look: what differs, and the likeliest single cause of it. */
export function judgeTestFrame(model: TestFrameModel, seen: readonly SeenArea[]): TestFrameVerdict {
  if (seen.length < LEAST_AREAS) return tooLittle(seen.length)
  const fitter = new SlipFitter(model, seen)
  const screened = model.slips
    .flatMap((slip) => fitter.startsOf(slip).map((start) => fitter.fit(slip, ROUNDS_TO_SCREEN, start)))
    .sort((a, b) => score(model, b) - score(model, a))
  const best = new Map<string, Fit>()
  screened.forEach((fit, place) => {
    const isRefined = place < SUSPECTS_REFINED || fit.slip.kind === 'nothing'
    const refined = isRefined ? fitter.fit(fit.slip, ROUNDS_TO_REFINE, fit.values) : fit
    const before = best.get(fit.slip.key)
    if (before === undefined || refined.cost < before.cost) best.set(fit.slip.key, refined)
  })
  const fits = [...best.values()].sort((a, b) => score(model, b) - score(model, a))
  const first = fits[0]!
  const top = score(model, first)
  const whole = fits.reduce((sum, fit) => sum + Math.exp(score(model, fit) - top), 0)
  const suspects = fits.map((fit): Suspect => {
    const { key, kind, lightIds, words, action } = fit.slip
    const amount = fitter.amountOf(fit)
    return {
      key, kind, lightIds, action, amount, likelihood: Math.exp(score(model, fit) - top) / whole,
      words: words.replace('#', amountWords(kind, amount ?? 0, model.whiteBalanceKelvin)),
    }
  })
  const kind = kindOf(first, suspects)
  const alike = kind === 'all-well' ? 1 : suspects.filter(({ likelihood }) => likelihood >= ALIKE_SHARE * suspects[0]!.likelihood).length
  const [exposureStops, contrast, mired] = first.values as [number, number, number]
  const camera = {
    exposureStops: first.slip.kind === 'exposure' ? 0 : exposureStops, contrast, mired: first.slip.kind === 'white-balance' ? 0 : mired,
  }
  const differences = differencesOf(model, fitter, seen, camera)
  const { misfit } = first
  return { kind, ...verdictWords(kind, suspects, alike, differences), suspects, alike, differences, camera, misfit }
}

/** Logarithm of how likely a slip is, but for a constant: how often it is made, and how well it explains what is seen. */
function score({ slips }: TestFrameModel, { slip, cost }: Fit): number {
  const ways = slips.filter(({ kind }) => kind === slip.kind).length
  return Math.log(SLIP_OFTEN[slip.kind] / ways) - cost
}

function kindOf({ slip, misfit }: Fit, suspects: readonly Suspect[]): VerdictKind {
  if (misfit > MOST_MISFIT) return 'more-than-one'
  if (slip.kind !== 'nothing') return suspects[0]!.likelihood > 0.5 || suspects[1]!.kind !== 'nothing' ? 'one-thing' : 'unsure'
  return suspects[0]!.likelihood >= SURE ? 'all-well' : 'unsure'
}

function tooLittle(count: number): TestFrameVerdict {
  return {
    kind: 'too-little', suspects: [], alike: 0, differences: [], misfit: 0,
    words: `Only ${count} of the areas lie inside this photograph; ${LEAST_AREAS} are needed to tell one light from another.`,
    action: 'Use a frame with the whole face and the background in it.',
    camera: { exposureStops: 0, contrast: 0, mired: 0 },
  }
}
