import { useRef } from 'react'
import { plainLines } from '../../../shared-core/predict/plainWords.ts'
import { Print } from '../../frame/Print.tsx'
import { useElementSize } from '../../frame/useElementSize.ts'
import { useBoard } from '../../session/useBoard.ts'

/** The predicted picture as large as there is room for, on mid-grey, with what was pinned and drawn and nothing to read off. */
export function PlainFrame() {
  const prediction = useBoard((board) => board.prediction)
  const solo = useBoard((board) => board.solo)
  const isSolo = useBoard((board) => board.soloLightId !== null)
  const easel = useRef<HTMLDivElement>(null)
  const room = useElementSize(easel)
  const { framing } = prediction
  const aspect = framing.atSubjectWidthMetres / framing.atSubjectHeightMetres
  const width = room ? Math.floor(Math.min(room.widthPixels, room.heightPixels * aspect)) : 0
  return (
    <section className="plain-frame" aria-label="Frame">
      <div ref={easel} className="plain-frame-easel">
        {width > 0 && (
          <Print
            widthPixels={width}
            heightPixels={Math.floor(width / aspect)}
            view="picture"
            allAreas={false}
            eyesShown={false}
            isPlain
            description={`Predicted picture of ${prediction.lookName}: ${plainLines(prediction).slice(0, 2).map(({ words }) => words).join('; ')}.`}
          />
        )}
      </div>
      {isSolo && (
        <p className="plain-frame-solo">
          One light by itself <button type="button" className="button" onClick={() => solo(null)}>All lights</button>
        </p>
      )}
    </section>
  )
}
