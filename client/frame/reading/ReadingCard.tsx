import { useEffect, useState } from 'react'
import { clippedInWords } from '../clipping.ts'
import './ReadingCard.css'
import { levelInWords, readingInWords, type LitBy } from './readingWords.ts'
import type { TakenReading } from './useReading.ts'

/** Keys that are held down pass many places; only where they rest is read out. */
const REST_MS = 400
/** Lower than this the reading stands at the head, out of its own way. */
const LOW_IN_FRAME = 0.72

/** What the picture says at a place: its level and colour, which channels clip, and whose light it is. */
export function ReadingCard({ taken }: { readonly taken: TakenReading | null }) {
  return (
    <>
      {taken !== null && <Card taken={taken} />}
      <Heard taken={taken} />
    </>
  )
}

function Card({ taken: { place, reading, litBy } }: { readonly taken: TakenReading }) {
  return (
    <>
      {place.by !== 'pointer' && (
        <span className="reading-mark" style={{ left: `${place.frameX * 100}%`, top: `${place.frameY * 100}%` }} aria-hidden />
      )}
      <div className="frame-reading" data-at={place.frameY > LOW_IN_FRAME ? 'head' : 'foot'} aria-hidden>
        <p className="frame-reading-level">
          <span className="frame-reading-patch" style={{ background: reading.hex }} />
          <span>{levelInWords(reading)} · {reading.words}<b>{clippedInWords(reading.clipped)}</b></span>
        </p>
        <p className="frame-reading-who">
          {litBy?.length === 0 ? 'no light' : (litBy?.map((one) => <Who key={one.letter} {...one} />) ?? '\u00a0')}
        </p>
      </div>
    </>
  )
}

function Who({ letter, percent, gelHex }: LitBy) {
  return (
    <span className="frame-reading-light" data-letter={letter} data-percent={percent}>
      <span className="frame-reading-gel" data-clear={gelHex === null} style={gelHex === null ? undefined : { background: gelHex }} />
      <b>{letter}</b> {percent} %
    </span>
  )
}

function Heard({ taken }: { readonly taken: TakenReading | null }) {
  const [heard, setHeard] = useState('')
  const words = taken === null || taken.place.by === 'pointer' ? '' : readingInWords(taken.reading, taken.litBy ?? [])
  useEffect(() => {
    const timer = setTimeout(() => setHeard(words), REST_MS)
    return () => clearTimeout(timer)
  }, [words])
  return <p className="heard" role="status" aria-live="polite">{heard}</p>
}
