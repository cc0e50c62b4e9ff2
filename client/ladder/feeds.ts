import type { Prediction } from '../../shared-core/predict/prediction.ts'

/** A light that gives an area part of its brightness. */
export interface Feed {
  readonly areaId: string
  readonly lightId: string
  /** Share of the area's luminance in the picture, 0-1. */
  readonly share: number
}

/** What is touched on the ladder. */
export type Touched = { readonly kind: 'area' | 'light'; readonly id: string } | null

/** Feeds thinner than this are left out: they could not be seen in the picture. */
export const LEAST_SHARE = 0.01

/** Who feeds whom: every light of the touched area, or every area of the touched light; thickest first. */
export function feedsOf(prediction: Prediction, touched: Touched): readonly Feed[] {
  if (touched === null) return []
  return prediction.areas
    .filter((area) => touched.kind === 'light' || area.id === touched.id)
    .flatMap((area) =>
      area.byLight
        .filter((from) => touched.kind === 'area' || from.lightId === touched.id)
        .map((from) => ({ areaId: area.id, lightId: from.lightId, share: from.share })),
    )
    .filter((feed) => feed.share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share)
}

/** "A 62 %, C 31 %, B 7 %": the feeds of one area in words, for those who do not see the lines. */
export function feedsInWords(prediction: Prediction, areaId: string): string {
  const letterOf = new Map(prediction.lights.map((light) => [light.id, light.letter]))
  const parts = feedsOf(prediction, { kind: 'area', id: areaId }).map(
    ({ lightId, share }) => `${letterOf.get(lightId) ?? '?'} ${Math.round(share * 100)} %`,
  )
  return parts.length === 0 ? 'no light' : parts.join(', ')
}
