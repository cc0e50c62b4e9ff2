import { useState } from 'react'
import type { Stamp } from '../../../shared-core/notes/entries.ts'
import { whenWords } from './whenWords.ts'

interface SaidProps {
  readonly by: Stamp
  readonly text: string
  readonly isOnTheWay: boolean
  readonly colour: string | null
}

/** What one person said, and when. */
export function Said({ by, text, isOnTheWay, colour }: SaidProps) {
  const [now] = useState(() => Date.now())
  const when = new Date(by.atMs)
  return (
    <div className="said">
      <p className="said-who">
        <b>{by.name}</b> {by.role}
        <time dateTime={when.toISOString()} title={when.toLocaleString()}>{isOnTheWay ? 'on its way' : whenWords(by.atMs, now)}</time>
        {colour !== null && <span className="note-swatch" style={{ background: colour }} title={`The colour there then: ${colour}`} />}
      </p>
      <p className="said-text">{text}</p>
    </div>
  )
}
