import { useMemo, useState } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import { PictureCanvas } from '../picture/PictureCanvas.tsx'
import { cornerClearOf } from './cornerClearOf.ts'
import './EyeInset.css'

/** How much larger than in the Frame the eyes are drawn. */
const TIMES = 3
/** Of the Frame's width. */
const WIDTH = 0.54
const WIDTH_TO_HEIGHT = 2.7
const FACE = new Set(['nose', 'lips', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'hair'])

interface EyeInsetProps {
  readonly frameWidthPixels: number
  readonly frameHeightPixels: number
  readonly fadeKey: string
}

/** The eyes with what they mirror, drawn three times as large, in the corner that is farthest from the face. */
export function EyeInset({ frameWidthPixels, frameHeightPixels, fadeKey }: EyeInsetProps) {
  const areas = useBoard((board) => board.prediction.areas)
  const [trouble, setTrouble] = useState('')
  const soloLightId = useBoard((board) => board.soloLightId)
  const widthPixels = Math.round(WIDTH * frameWidthPixels)
  const heightPixels = Math.round(widthPixels / WIDTH_TO_HEIGHT)
  const heightShare = heightPixels / frameHeightPixels
  const { side, edge } = useMemo(
    () => cornerClearOf(areas.filter(({ id }) => FACE.has(id)), WIDTH, heightShare),
    [areas, heightShare],
  )
  const eyes = useMemo(() => ({ width: WIDTH / TIMES, height: heightShare / TIMES }), [heightShare])
  return (
    <figure className="eye-inset" data-side={side} data-edge={edge} style={{ width: widthPixels, height: heightPixels }}>
      <PictureCanvas
        kind="eyes"
        soloLightId={soloLightId}
        widthPixels={Math.round(widthPixels * Math.min(2, devicePixelRatio))}
        heightPixels={Math.round(heightPixels * Math.min(2, devicePixelRatio))}
        fadeKey={fadeKey}
        eyes={eyes}
        onTrouble={setTrouble}
        description="The eyes, three times as large, with what they mirror"
      >
        <p className="eye-inset-none">{trouble}</p>
      </PictureCanvas>
      <figcaption className="eye-inset-words">Eyes</figcaption>
    </figure>
  )
}
