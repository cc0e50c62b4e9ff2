import { History } from 'lucide-react'
import { useState } from 'react'
import { Popover } from '../controls/Popover.tsx'
import { useBoardAtOnce } from '../session/useBoard.ts'
import type { ToldEdit } from './explainer.ts'
import { useToldEdits } from './useToldEdits.ts'
import './explain.css'

/**
 * What the last edit did to the look on the board, in one quiet line between the picture and what it is made with; the
 * edits before it in a list behind one button. Read out politely, and never in the way of anything.
 */
export function WhatItDid() {
  const told = useToldEdits()
  const lookId = useBoardAtOnce((board) => board.lookId)
  const [isOpen, setIsOpen] = useState(false)
  const here = told.filter((each) => each.lookId === lookId)
  const last = here[0]
  return (
    <section className="did" aria-label="What the last edit did">
      <p className="did-line" role="status" title={last && wordsOf(last)}>
        {last && <span key={last.number} className="did-words">{wordsOf(last)}</span>}
      </p>
      {!last && <p className="did-idle" aria-hidden>What an edit did is said here</p>}
      {here.length > 1 && (
        <Popover
          label="What happened"
          side="top"
          align="end"
          open={isOpen}
          onOpen={setIsOpen}
          trigger={
            <button type="button" className="button did-more">
              <History size={14} aria-hidden /> <span className="heard">What happened:</span> {here.length}
            </button>
          }
        >
          <h2 className="did-title">What happened</h2>
          <ol className="did-list">
            {here.map((each) => (
              <li key={each.number}>
                <time dateTime={new Date(each.atMs).toISOString()}>{clockTime(each.atMs)}</time>
                <span>{wordsOf(each)}</span>
              </li>
            ))}
          </ol>
        </Popover>
      )}
    </section>
  )
}

function wordsOf({ who, line }: ToldEdit): string {
  return who === null ? line : `${who}: ${line}`
}

function clockTime(atMs: number): string {
  return new Date(atMs).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })
}
