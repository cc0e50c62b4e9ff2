import { useStore } from 'zustand'
import { shellKept } from '../../connection/shellKept.ts'
import { Popover } from '../../controls/Popover.tsx'
import type { ConnectionView } from '../../session/board.ts'
import { useBoard } from '../../session/useBoard.ts'
import './ConnectionWords.css'

/** The connection in a word or two, with a mark whose shape says it too; pressed, the whole sentence. */
export function ConnectionWords() {
  const connection = useBoard((board) => board.connection)
  const repairs = useBoard((board) => board.repairs)
  const shell = useStore(shellKept)
  const short = connection.words.split(/[.,:]/)[0] ?? ''
  return (
    <Popover
      label="Connection"
      align="end"
      trigger={
        <button type="button" className="button connection-words" aria-label={`Connection: ${connection.words}`}>
          <ConnectionMark state={connection.notKept === null ? connection.state : 'refused'} />
          <span>{short}</span>
        </button>
      }
    >
      <div className="connection-words-more">
        <p>{connection.words}.</p>
        {connection.notKept !== null && <p className="connection-words-trouble">{connection.notKept}</p>}
        <p className="connection-words-soft">{shell.words}.</p>
        {repairs.length > 0 && (
          <>
            <h3>Repaired on reading</h3>
            <ul>
              {repairs.map((repair) => (
                <li key={repair}>{repair}</li>
              ))}
            </ul>
          </>
        )}
      </div>
    </Popover>
  )
}

/** Full, half, ring or cross: the state without a colour. */
function ConnectionMark({ state }: { readonly state: ConnectionView['state'] }) {
  return (
    <svg className="connection-mark" width="10" height="10" viewBox="0 0 10 10" aria-hidden>
      {state === 'live' && <circle cx="5" cy="5" r="4" fill="currentColor" />}
      {state === 'joining' && <path d="M5 1a4 4 0 0 1 0 8z M5 1a4 4 0 1 0 0 8" fill="currentColor" fillOpacity="0.5" />}
      {state === 'away' && <circle cx="5" cy="5" r="3.5" fill="none" stroke="currentColor" strokeWidth="1.5" />}
      {(state === 'refused' || state === 'closed') && <path d="M1.5 1.5l7 7m0-7l-7 7" stroke="currentColor" strokeWidth="1.6" />}
    </svg>
  )
}
