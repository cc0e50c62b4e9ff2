import type { ColourMatchWay } from '../../../shared-core/ask/matchColour.ts'
import { capital } from '../../../shared-core/plan/capital.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { useBoard } from '../../session/useBoard.ts'
import type { Preview } from '../usePreview.ts'

interface MatchWaysProps {
  readonly ways: readonly ColourMatchWay[]
  readonly wantedHex: string
  readonly preview: Preview
}

const MOST_SHOWN = 5

/** Sheets and stacks, nearest first: what is wanted beside what they give, how far off in a number and in words, at which power. */
export function MatchWays({ ways, wantedHex, preview }: MatchWaysProps) {
  const mayEdit = useBoard((board) => board.mayEdit)
  return (
    <ol className="answer-rows" aria-label="Nearest first">
      {ways.slice(0, MOST_SHOWN).map((way) => {
        const key = way.gelIds.join('+')
        const isSeen = preview.seen === key
        return (
          <li key={key} className="answer-row">
            <button type="button" className="answer-face" aria-pressed={isSeen} disabled={!mayEdit} onClick={() => preview.look(key, way.edit)}>
              <span className="answer-patch" aria-hidden>
                <span style={{ background: wantedHex }} />
                <span style={{ background: way.reachedDisplay }} />
              </span>
              <span className="answer-name">{capital(way.name)}</span>
              <span className="answer-figure">off by <b>{way.difference.toFixed(1)}</b></span>
              <span className="answer-note">
                {way.words} · {way.powerText}{way.lightStops === null ? '' : `, ${signedStops(way.lightStops)}`}
                {Math.abs(way.stopsShort) >= 0.05 && ` · ${way.stopsShort > 0 ? `lacks ${way.stopsShort.toFixed(1)} stop` : `${(-way.stopsShort).toFixed(1)} too strong at its lowest`}`}
                {way.sheetsShort > 0 && ` · ${way.sheetsShort} to buy`}
              </span>
            </button>
            {isSeen && <button type="button" className="button button-main answer-apply" onClick={() => preview.apply(way.edit)}>Apply</button>}
          </li>
        )
      })}
    </ol>
  )
}
