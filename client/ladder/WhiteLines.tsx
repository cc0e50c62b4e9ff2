import { memo } from 'react'
import { signedStops } from './areaNames.ts'
import type { LadderLayout } from './ladderLayout.ts'

/** Where what lies behind reads white: clear, and under each gel that is lit. In words; the dash only carries the hue along. */
export const WhiteLines = memo(function WhiteLines({ layout }: { readonly layout: LadderLayout }) {
  const { widthPixels, rulerLeft, tapeLeft } = layout.columns
  return (
    <g role="list" aria-label="White lines: the level at which the background reads white">
      {layout.whites.map(({ thing: line, truePixels, labelPixels, pinned }) => (
        <g key={line.name} role="listitem" aria-label={`white ${line.name}: ${signedStops(line.stops)} stops`}>
          {pinned === null && (
            <>
              <line x1={rulerLeft - 6} x2={tapeLeft - 4} y1={truePixels} y2={truePixels} className="ladder-white" style={{ stroke: line.gelHex ?? undefined }} />
              <path d={`M${tapeLeft - 4} ${truePixels}L${tapeLeft + 2} ${labelPixels}`} className="ladder-white" style={{ stroke: line.gelHex ?? undefined }} />
            </>
          )}
          <text x={widthPixels - 6} y={labelPixels} className="ladder-white-words">
            {pinned === 'above' ? '↑ ' : pinned === 'below' ? '↓ ' : ''}white: {line.name}
            {pinned === null ? '' : ` ${signedStops(line.stops)}`}
          </text>
        </g>
      ))}
    </g>
  )
})
