import { useCallback, useId, useMemo, useState } from 'react'
import type { ColourTarget } from '../../../shared-core/ask/matchColour.ts'
import { colourWords } from '../../../shared-core/colour/hueWords.ts'
import { linearFromHex, xyzFromLinear } from '../../../shared-core/spectra/srgb.ts'
import { ChoiceList } from '../../controls/ChoiceList.tsx'
import { Switch } from '../../controls/Switch.tsx'
import { useBoard } from '../../session/useBoard.ts'
import '../answers.css'
import { usePreview } from '../usePreview.ts'
import { FrameDropper, type FrameSample } from './FrameDropper.tsx'
import './match.css'
import { MatchWays } from './MatchWays.tsx'
import { readReference, sampleReference, type Reference } from './reference.ts'
import { ReferencePicture, type Place } from './ReferencePicture.tsx'
import { useMatch } from './useMatch.ts'

const MIDDLE: Place = { x: 0.5, y: 0.5 }

/** A colour off a reference, or off the Frame, and the sheets that bring an area nearest to it. The picture stays here. */
export function MatchReference({ areaId: firstAreaId }: { readonly areaId: string }) {
  const areas = useBoard((board) => board.prediction.areas)
  const [areaId, setAreaId] = useState(firstAreaId)
  const [reference, setReference] = useState<Reference | null>(null)
  const [place, setPlace] = useState(MIDDLE)
  const [isOwnPicture, setIsOwnPicture] = useState(false)
  const [fromFrame, setFromFrame] = useState<FrameSample | null>(null)
  const [isDropping, setIsDropping] = useState(false)
  const [isOver, setIsOver] = useState(false)
  const [trouble, setTrouble] = useState('')
  const fileId = useId()
  const preview = usePreview()

  const hex = useMemo(() => fromFrame?.hex ?? (reference ? sampleReference(reference, place.x, place.y) : null), [fromFrame, reference, place])
  const target = useMemo((): ColourTarget | null => {
    if (fromFrame) return { xyz: fromFrame.xyz }
    return hex === null ? null : { hex, isOwnPicture }
  }, [fromFrame, hex, isOwnPicture])
  const { match, share, trouble: noAnswer } = useMatch(areaId, target)
  const words = hex === null ? '' : colourWords(xyzFromLinear(linearFromHex(hex)))
  const leaveFrame = useCallback(() => setIsDropping(false), [])

  function read(file: File | undefined): void {
    if (!file) return
    readReference(file).then(
      (found) => {
        setReference(found)
        setFromFrame(null)
        setPlace(MIDDLE)
        setTrouble('')
      },
      (fault: unknown) => setTrouble(fault instanceof Error ? fault.message : String(fault)),
    )
  }

  return (
    <div
      className="match"
      data-over={isOver}
      onDragOver={(event) => {
        event.preventDefault()
        setIsOver(true)
      }}
      onDragLeave={() => setIsOver(false)}
      onDrop={(event) => {
        event.preventDefault()
        setIsOver(false)
        read(event.dataTransfer.files[0])
      }}
    >
      <div className="answer-acts">
        <label className="button button-lined match-file" htmlFor={fileId}>
          Choose a picture
          <input id={fileId} type="file" accept="image/*" className="heard" onChange={(event) => read(event.currentTarget.files?.[0])} />
        </label>
        <button type="button" className="button button-lined" aria-pressed={isDropping} onClick={() => setIsDropping(!isDropping)}>
          From the Frame
        </button>
      </div>
      <p className="answer-words" role="status">{trouble || noAnswer || (reference || fromFrame ? '' : 'Drop a picture here or choose one. It stays on this device.')}</p>
      {isDropping && <FrameDropper onTaken={setFromFrame} onLeave={leaveFrame} />}
      {reference && (
        <ReferencePicture
          reference={reference}
          place={place}
          words={words}
          hex={hex ?? 'none'}
          onPlace={(next) => {
            setFromFrame(null)
            setPlace(next)
          }}
        />
      )}
      {hex !== null && (
        <div className="match-wanted">
          <span className="match-swatch" style={{ background: hex }} aria-hidden />
          <span>
            Wanted: {words}
            <span className="answer-note">{fromFrame ? 'from the Frame' : reference?.name}</span>
          </span>
          <ChoiceList
            label="on"
            value={areaId}
            options={areas.filter(({ inFrame }) => inFrame).map(({ id, label }) => ({ value: id, label }))}
            onChoose={setAreaId}
          />
        </div>
      )}
      {reference && !fromFrame && <Switch label="A picture this board made: allow for its lens’s stray light" on={isOwnPicture} onTurn={setIsOwnPicture} />}
      {match && hex !== null && (
        <>
          <p className="match-verdict" data-near={match.isNear} role="status">{match.words}</p>
          <MatchWays ways={match.ways} wantedHex={hex} preview={preview} />
        </>
      )}
      {share !== null && <p className="answer-words">Trying sheets and pairs, {Math.round(share * 100)} %</p>}
    </div>
  )
}
