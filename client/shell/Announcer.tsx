import { useEffect, useState } from 'react'
import { useBoard } from '../session/useBoard.ts'
import './Announcer.css'

/** How long the last words stay in sight. They are also in the page's live region, which does not hurry. */
const inSightMs = 6_000

/** What the last edit did, or why it was refused: read out politely, and shown for a while at the page's foot. */
export function Announcer() {
  const words = useBoard((board) => board.lastWords)
  const [passed, setPassed] = useState('')

  useEffect(() => {
    if (words === '') return
    const timer = setTimeout(() => setPassed(words), inSightMs)
    return () => clearTimeout(timer)
  }, [words])

  return (
    <p className="announcer" role="status" aria-live="polite" data-shown={words !== '' && words !== passed}>
      {words}
    </p>
  )
}
