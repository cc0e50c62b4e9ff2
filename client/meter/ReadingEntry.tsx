import { Mic } from 'lucide-react'
import { useState, type FormEvent } from 'react'
import { parseMeterReading } from '../../shared-core/plan/entry/meterReading.ts'
import { asRead } from './meterWords.ts'
import { useSpeech } from './useSpeech.ts'

const FULL_STOPS = ['1', '1.4', '2', '2.8', '4', '5.6', '8', '11', '16', '22', '32', '45'] as const
const TENTHS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const

interface ReadingEntryProps {
  /** The camera's aperture: "1.7 under" counts from it. */
  readonly takenAtFNumber: number
  readonly onRead: (fNumber: number, said: string) => void
}

/** A reading by two touches, by typing, or said aloud: one line of text takes them all. */
export function ReadingEntry({ takenAtFNumber, onRead }: ReadingEntryProps) {
  const [text, setText] = useState('')
  const [full, setFull] = useState<string | null>(null)
  const [tenths, setTenths] = useState<number | null>(null)
  const [asked, setAsked] = useState(false)
  const read = parseMeterReading(text, takenAtFNumber)
  const speech = useSpeech((heard) => {
    const understood = heard.find((words) => parseMeterReading(words, takenAtFNumber).ok)
    type(understood ?? heard[0] ?? '')
  })

  function type(next: string): void {
    setText(next)
    setFull(null)
    setTenths(null)
    setAsked(false)
  }
  function touch(nextFull: string | null, nextTenths: number | null): void {
    setFull(nextFull)
    setTenths(nextTenths)
    setAsked(false)
    if (nextFull !== null) setText(`${nextFull} and ${nextTenths ?? 0}`)
  }
  function take(event: FormEvent): void {
    event.preventDefault()
    if (read.ok) onRead(read.value, text)
    else setAsked(true)
  }

  return (
    <form className="meter-entry" onSubmit={take}>
      <div className="meter-typed">
        <label htmlFor="meter-reading">The meter shows</label>
        <input
          id="meter-reading" className="number-field-input" value={text} placeholder="8 and 3" autoComplete="off" enterKeyHint="done"
          aria-describedby="meter-understood" onChange={(event) => type(event.currentTarget.value)}
        />
        {speech.isOffered && (
          <button type="button" className="button button-lined" aria-pressed={speech.isListening} onClick={speech.listen}>
            <Mic size={18} aria-hidden /> {speech.isListening ? 'Listening' : 'Say it'}
          </button>
        )}
      </div>
      <p id="meter-understood" className="meter-understood" role="status">
        {read.ok ? `f/${asRead(read.value)} tenths` : asked ? read.message : ' '}
      </p>
      <div className="meter-pad meter-pad-full" role="group" aria-label="Full stop">
        {FULL_STOPS.map((one) => (
          <button key={one} type="button" className="button button-lined" aria-pressed={full === one} onClick={() => touch(one, tenths)}>
            {one}
          </button>
        ))}
      </div>
      <p className="meter-pad-label" aria-hidden>and tenths</p>
      <div className="meter-pad meter-pad-tenths" role="group" aria-label="Tenths">
        {TENTHS.map((one) => (
          <button key={one} type="button" className="button button-lined" aria-pressed={tenths === one} onClick={() => touch(full, one)}>
            {one}
          </button>
        ))}
      </div>
      <button type="submit" className="button button-main meter-take">
        Take it
      </button>
    </form>
  )
}
