import { useBoard } from '../session/useBoard.ts'
import type { Feed } from './feeds.ts'
import type { LadderLayout } from './ladderLayout.ts'

const THICKEST_PIXELS = 9

/** Who feeds whom: a line for each light of the touched area, or each area of the touched light; thick means much. */
export function Feeds({ layout, feeds }: { readonly layout: LadderLayout; readonly feeds: readonly Feed[] }) {
  const lights = useBoard((board) => board.prediction.lights)
  const { patchRight, tapeLeft, rulerLeft, rulerRight } = layout.columns
  return (
    <g className="ladder-feeds" aria-hidden>
      {feeds.map(({ areaId, lightId, share }) => {
        const area = layout.areas.find(({ thing }) => thing.area.id === areaId)
        const light = layout.lights.find(({ thing }) => thing.id === lightId)
        const gel = lights.find(({ id }) => id === lightId)?.gel
        if (!area || !light) return null
        const from = `M${patchRight} ${area.labelPixels}C${rulerLeft + 8} ${area.labelPixels}`
        return (
          <path
            key={`${areaId} ${lightId}`}
            className="ladder-feed"
            d={`${from} ${rulerRight - 8} ${light.labelPixels} ${tapeLeft} ${light.labelPixels}`}
            style={{ stroke: gel && !gel.clear ? gel.onWhite : undefined, strokeWidth: 1 + share * (THICKEST_PIXELS - 1) }}
          />
        )
      })}
    </g>
  )
}
