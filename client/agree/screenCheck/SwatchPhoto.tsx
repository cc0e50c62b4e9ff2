import { useEffect, useRef, useState, type MouseEvent } from 'react'
import { SwatchField } from '../../controls/SwatchField.tsx'
import { readReference, sampleReference, type Reference } from '../../ask/match/reference.ts'
import { photographedSwatch, type PhotographedSwatch } from './swatchPhoto.ts'

/** A photograph that was measured, to be kept with the answers. */
export interface MeasuredPhoto extends PhotographedSwatch {
  readonly photo: Reference
}

/** The other way to check: a photograph of a posted swatch beside a grey card, measured against what was posted. */
export function SwatchPhoto({ onMeasured }: { readonly onMeasured: (measured: MeasuredPhoto) => void }) {
  const [photo, setPhoto] = useState<Reference | null>(null)
  const [trouble, setTrouble] = useState('')
  const [card, setCard] = useState<string | null>(null)
  const [swatch, setSwatch] = useState<string | null>(null)
  const [posted, setPosted] = useState('#6a4c93')

  async function take(file: File | undefined): Promise<void> {
    if (file === undefined) return
    setCard(null)
    setSwatch(null)
    try {
      setPhoto(await readReference(file))
      setTrouble('')
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error))
    }
  }

  const found = card !== null && swatch !== null ? photographedSwatch(card, swatch, posted) : null
  return (
    <div
      className="swatch-photo"
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault()
        event.stopPropagation()
        void take(event.dataTransfer.files[0])
      }}
    >
      <p>Lay the posted swatch beside a grey card in the light you judge by, photograph both, and touch the card and then the swatch. The photograph is read on this device; it goes to the job only with a result that you keep.</p>
      <div className="swatch-photo-fields">
        <label className="screen-answer swatch-photo-file">
          <input type="file" className="heard" accept="image/*" onChange={({ target }) => void take(target.files?.[0])} />
          Take or choose a photograph
        </label>
        <div className="swatch-photo-posted">
          <SwatchField label="The swatch as posted" value={posted} onHold={() => undefined} onDone={setPosted} />
        </div>
      </div>
      {trouble !== '' && <p role="alert">{trouble}</p>}
      {photo !== null && (
        <Photograph photo={photo} onPick={(colour) => {
          if (card === null || swatch !== null) {
            setCard(colour)
            setSwatch(null)
          } else {
            setSwatch(colour)
            const measured = photographedSwatch(card, colour, posted)
            if (measured !== null) onMeasured({ ...measured, photo })
          }
        }} />
      )}
      {photo !== null && (
        <p role="status" className="swatch-photo-found">
          {card === null ? 'Touch the grey card' : swatch === null ? 'Now touch the swatch'
            : (found?.words ?? 'The card is too dark or burnt out in this photograph: take it again, a little brighter or darker.')}
        </p>
      )}
    </div>
  )
}

function Photograph({ photo, onPick }: { readonly photo: Reference; readonly onPick: (colour: string) => void }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    canvas.current?.getContext('2d')?.putImageData(photo.pixels, 0, 0)
  }, [photo])
  function pick({ currentTarget, clientX, clientY, detail }: MouseEvent<HTMLButtonElement>): void {
    const { left, top, width, height } = currentTarget.getBoundingClientRect()
    // By keys there is no place: the middle.
    onPick(detail === 0 ? sampleReference(photo, 0.5, 0.5) : sampleReference(photo, (clientX - left) / width, (clientY - top) / height))
  }
  return (
    <button type="button" className="swatch-photo-picture" aria-label={`${photo.name}: touch a place to take its colour`} onClick={pick}>
      <canvas ref={canvas} width={photo.pixels.width} height={photo.pixels.height} />
    </button>
  )
}
