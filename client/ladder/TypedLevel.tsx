import { useEffect, useRef, useState, type KeyboardEvent } from 'react'
import { parseStops } from '../../shared-core/plan/entry/stops.ts'

interface TypedLevelProps {
  readonly label: string
  readonly topPixels: number
  /** What the line begins with: the first key, or the level now. */
  readonly start: string
  /** Whether the first key is typed already; else the level now is to be typed over. */
  readonly isBegun: boolean
  readonly onDone: (stops: number) => void
  readonly onLeave: () => void
}

/** A level for an area, typed where its marker hangs. Enter asks for it, Escape leaves. */
export function TypedLevel({ label, topPixels, start, isBegun, onDone, onLeave }: TypedLevelProps) {
  const [text, setText] = useState(start)
  const [trouble, setTrouble] = useState('')
  const field = useRef<HTMLInputElement>(null)

  useEffect(() => {
    field.current?.focus()
    if (!isBegun) field.current?.select()
  }, [isBegun])

  function onKeyDown(event: KeyboardEvent): void {
    if (event.key !== 'Enter' && event.key !== 'Escape') return
    event.preventDefault()
    event.stopPropagation()
    if (event.key === 'Escape') return onLeave()
    const read = parseStops(text)
    if (read.ok) onDone(read.value)
    else setTrouble(read.message)
  }

  return (
    <div className="ladder-typed" style={{ top: topPixels }}>
      <input
        ref={field}
        className="ladder-typed-field"
        value={text}
        aria-label={`Level wanted of ${label}, in stops from the aperture`}
        aria-invalid={trouble !== ''}
        maxLength={24}
        autoComplete="off"
        enterKeyHint="go"
        onChange={(event) => setText(event.currentTarget.value)}
        onKeyDown={onKeyDown}
        onBlur={onLeave}
      />
      <span aria-hidden>wanted</span>
      {trouble !== '' && <p role="alert" className="ladder-typed-trouble">{trouble}</p>}
    </div>
  )
}
