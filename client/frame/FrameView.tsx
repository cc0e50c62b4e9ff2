import { useMemo, useRef, useState } from 'react'
import { useBoard } from '../session/useBoard.ts'
import { AreaMarks } from './AreaMarks.tsx'
import { colourAlone } from './colourAlone.ts'
import { FormPicture } from './FormPicture.tsx'
import './FrameView.css'
import { PictureCanvas } from './picture/PictureCanvas.tsx'
import { useElementSize } from './useElementSize.ts'
import { backgroundInWords } from './verdictWords.ts'

/** Sharp enough for the biggest print on the easel, and still quick to sum on every move of a hand. */
const WIDEST_PIXELS = 440

/** The predicted picture at the camera's crop, on mid-grey, with what it reads as in words under it. */
export function FrameView() {
  const prediction = useBoard((board) => board.prediction)
  const stature = useBoard((board) => board.shown.looks[board.lookId]?.subject.heightMetres ?? 1.7)
  const finish = useBoard((board) => board.shown.looks[board.lookId]?.finish)
  const intent = useBoard((board) => board.shown.looks[board.lookId]?.backdrop.intent ?? 'free')
  const soloLightId = useBoard((board) => board.soloLightId)
  const [allAreas, setAllAreas] = useState(false)
  const easel = useRef<HTMLDivElement>(null)
  const room = useElementSize(easel)

  const { areas, framing, taking } = prediction
  const solo = prediction.lights.find((light) => light.id === soloLightId)
  const colours = useMemo(
    () => areas.map((area) => (solo && finish ? colourAlone(area, solo.id, taking, finish) : area.colour.display)),
    [areas, solo, taking, finish],
  )
  const aspect = framing.atSubjectWidthMetres / framing.atSubjectHeightMetres
  const width = room ? Math.floor(Math.min(room.widthPixels, room.heightPixels * aspect)) : 0
  const verdict = solo ? `${solo.letter} alone: ${solo.summary}` : backgroundInWords(prediction, intent)

  const pixels = Math.min(WIDEST_PIXELS, Math.round(width * devicePixelRatio))
  const fadeKey = `${soloLightId ?? ''} ${prediction.lights.map(({ on, gel }) => `${on} ${gel.name}`).join()}`
  const description = `Predicted picture of ${prediction.lookName}. ${verdict}.`

  return (
    <section className="frame" aria-label="Frame">
      <div ref={easel} className="frame-easel">
        {width > 0 && (
          <div className="frame-print" style={{ width, height: Math.floor(width / aspect) }}>
            <PictureCanvas
              kind="frame"
              soloLightId={soloLightId}
              widthPixels={pixels}
              heightPixels={Math.round(pixels / aspect)}
              fadeKey={fadeKey}
              description={description}
            >
              <FormPicture
                areas={areas}
                framing={framing}
                statureMetres={stature}
                colours={colours}
                widthPixels={pixels}
                fadeKey={fadeKey}
                description={description}
              />
            </PictureCanvas>
            <AreaMarks allShown={allAreas} />
          </div>
        )}
      </div>
      <footer className="frame-caption">
        <p className="frame-words">
          <strong>{prediction.lookName}</strong>
          <span>{verdict}</span>
        </p>
        <button type="button" className="button frame-toggle" aria-pressed={allAreas} onClick={() => setAllAreas(!allAreas)}>
          Areas
        </button>
      </footer>
    </section>
  )
}
