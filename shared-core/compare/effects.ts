import { areaChanges } from '../ask/visibleChange.ts'
import { effectWords } from '../ask/effectWords.ts'
import { applyEdit } from '../plan/edit.ts'
import type { Plan } from '../plan/schema/plan.ts'
import { LookPicture } from '../predict/lookPicture.ts'
import { pictureHeight } from '../predict/pictureText.ts'
import { createPredictor } from '../predict/predict.ts'
import type { SubjectAsset } from '../subject/asset/format.ts'
import type { LookChange, LookComparison } from './changes.ts'
import { frameColours, frameDifference, type FrameColours, type FrameDifference } from './frameDifference.ts'
import { visibilityOf, type Visibility } from './visibility.ts'

/** What one change does to the picture. */
export interface ChangeEffect extends FrameDifference {
  readonly key: string
  readonly words: string
  readonly visibility: Visibility
  /** "+0.9 on the camera-left cheek": what it does to the areas, the most first; empty where no area moves. */
  readonly effects: readonly string[]
  /** Name of the area whose colour moves most; null where none is in frame. */
  readonly mostAt: string | null
}

export interface LookEffects extends FrameDifference {
  readonly visibility: Visibility
  /** What all of it together does to the areas. */
  readonly effects: readonly string[]
  /** By mean difference of the Frames, the greatest first. */
  readonly changes: readonly ChangeEffect[]
}

/** Small enough to be quick, large enough that SMALLEST_PART of it is some forty pixels. */
export const COMPARED_WIDTH_PIXELS = 72

/**
 * What every change between two looks does to the picture, by drawing it: made alone in the look before, and taken back
 * alone from the look after. The larger of the two counts, so that two that make up for each other are both told.
 * Yields the share done, 0-1, after each; a caller may stop there.
 */
export function* effectsOf(comparison: LookComparison, asset: SubjectAsset): Generator<number, LookEffects> {
  const { lookId, before, after, changes } = comparison
  const height = pictureHeight(before.looks[lookId]!, COMPARED_WIDTH_PIXELS)
  const then = new FrameOf(asset, lookId, before, height)
  const now = new FrameOf(asset, lookId, after, height)
  const found: ChangeEffect[] = []
  for (const change of changes) {
    yield found.length / (changes.length + 1)
    found.push(effectOf(change, then, now))
  }
  const all = frameDifference(then.colours, now.colours)
  return {
    ...all, visibility: visibilityOf(all), effects: effectWords(then.prediction, now.prediction),
    changes: found.sort((a, b) => b.mean - a.mean),
  }
}

function effectOf({ key, words, make, takeBack }: LookChange, then: FrameOf, now: FrameOf): ChangeEffect {
  const made = then.after(applyEdit(then.plan, make))
  const takenBack = now.after(applyEdit(now.plan, takeBack))
  const larger = made.difference.mean >= takenBack.difference.mean ? made : takenBack
  const greatest = Math.max(made.difference.greatest, takenBack.difference.greatest)
  const difference = { mean: larger.difference.mean, greatest }
  const areas = areaChanges(then.prediction, made.prediction)
  const most = areas.reduce<(typeof areas)[number] | null>((best, area) => (best === null || area.difference > best.difference ? area : best), null)
  return {
    key, words, ...difference, visibility: visibilityOf(difference),
    effects: effectWords(then.prediction, made.prediction), mostAt: most?.label ?? null,
  }
}

/** The Frame of one plan, and others that differ from it by little. */
class FrameOf {
  private readonly picture: LookPicture
  private readonly predict = createPredictor()
  readonly colours: FrameColours
  readonly prediction

  /** @param height of every Frame: one that the camera crops otherwise is compared drawn out over it */
  constructor(asset: SubjectAsset, private readonly lookId: string, readonly plan: Plan, private readonly height: number) {
    this.picture = new LookPicture(asset)
    this.colours = this.draw(plan)
    this.prediction = this.predict(plan, lookId)
  }

  after(plan: Plan) {
    return { difference: frameDifference(this.colours, this.draw(plan)), prediction: this.predict(plan, this.lookId) }
  }

  private draw(plan: Plan): FrameColours {
    const size = { width: COMPARED_WIDTH_PIXELS, height: this.height }
    return frameColours(this.picture.draw(plan, this.lookId, { ...size, soloLightId: null, coarse: false }).rgba)
  }
}
