import { useState } from 'react'
import { Without } from './Without.tsx'
import type { WithoutWhat } from './lackChoices.ts'
import './without.css'

interface WithoutHereProps {
  readonly what: WithoutWhat
  /** "Do without it" */
  readonly words: string
}

/** A word on a thing's sheet that opens the question of what is left without it. */
export function WithoutHere({ what, words }: WithoutHereProps) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <div className="without-here">
      <button type="button" className="button button-lined without-open" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
        {words}
      </button>
      {isOpen && <Without what={what} />}
    </div>
  )
}
