import { effectWords } from '../ask/effectWords.ts'
import { applyEdit } from '../plan/edit.ts'
import { pictureHeight } from '../predict/pictureText.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import type { LookChange, LookComparison } from './changes.ts'
import { plainChangeWords, plainEffectWords } from './plainChange.ts'
import { COMPARED_WIDTH_PIXELS, eyesOf, LookShower, shownDifference, type ShownDifference, type ShownLook } from './shownLook.ts'
import { visibilityOf, type Visibility } from './visibility.ts'

/** What one change does to the picture. */
export interface ChangeEffect extends ShownDifference {
  readonly key: string
  readonly words: string
  readonly visibility: Visibility
  /** "+0.9 on the camera-left cheek": what it does to the areas, the most first; empty where no area moves. */
  readonly effects: readonly string[]
  /** Both without stops, letters or numbers. */
  readonly plain: { readonly words: string; readonly effects: readonly string[] }
}

export interface LookEffects extends ShownDifference {
  readonly visibility: Visibility
  /** What all of it together does to the areas. */
  readonly effects: readonly string[]
  /** By mean difference of the Frames, the greatest first. */
  readonly changes: readonly ChangeEffect[]
}

/**
 * What every change between two looks does to the picture, by drawing it: made alone in the look before, and taken back
 * alone from the look after. The larger of the two counts, so that two that make up for each other are both told.
 * Yields the share done, 0-1, after each; a caller may stop there.
 */
export function* effectsOf(comparison: LookComparison, asset: SubjectAsset): Generator<number, LookEffects> {
  const { lookId, before, after, changes } = comparison
  const height = pictureHeight(before.looks[lookId]!, COMPARED_WIDTH_PIXELS)
  const eyes = eyesOf(before, lookId, asset) ?? eyesOf(after, lookId, asset)
  // One for each side: what is drawn next differs by one change from what was drawn last.
  const [showThen, showNow] = [new LookShower(asset, lookId, height, eyes), new LookShower(asset, lookId, height, eyes)]
  const [then, now] = [showThen.show(before), showNow.show(after)]
  const found: ChangeEffect[] = []
  for (const change of changes) {
    yield found.length / (changes.length + 1)
    const made = showThen.show(applyEdit(before, change.make))
    const takenBack = showNow.show(applyEdit(after, change.takeBack))
    const plainly = plainChangeWords(change.key, before, after, lookId)
    found.push(effectOf(change, plainly, [then, made], [takenBack, now]))
  }
  const all = shownDifference(then, now)
  return {
    ...all, visibility: visibilityOf(all), effects: effectWords(then.prediction, now.prediction),
    changes: found.sort((a, b) => b.mean - a.mean || b.greatest - a.greatest),
  }
}

type Pair = readonly [without: ShownLook, made: ShownLook]

function effectOf({ key, words }: LookChange, plainly: string, alone: Pair, last: Pair): ChangeEffect {
  const [one, other] = [shownDifference(...alone), shownDifference(...last)]
  const isAlone = one.mean >= other.mean
  const larger = isAlone ? one : other
  const [without, made] = isAlone ? alone : last
  const difference = { ...larger, greatest: Math.max(one.greatest, other.greatest) }
  return {
    key, words, ...difference, visibility: visibilityOf(difference), effects: effectWords(without.prediction, made.prediction),
    plain: { words: plainly, effects: plainEffectWords(without.prediction, made.prediction) },
  }
}
