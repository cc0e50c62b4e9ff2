import { useEffect, useRef, useState } from 'react'
import type { MadeLink } from '../../connection/api.ts'
import './LinksList.css'

interface LinksListProps {
  readonly links: readonly MadeLink[]
  readonly onWithdraw: (linkId: string) => void
}

/** Every link that still lets anybody in or be here: who came by it and when, and how to take it back. */
export function LinksList({ links, onWithdraw }: LinksListProps) {
  const [asked, setAsked] = useState<string | null>(null)
  const alive = links.filter(({ state, seats }) => state === 'open' || (state === 'closed' && seats > 0))
  return (
    <ul className="links-list" aria-label="Links that are good">
      {alive.map((link) => (
        <li key={link.linkId} className="links-list-link">
          <div>
            <p className="links-list-role">{link.role}</p>
            <p className="links-list-words">{stateWords(link)}</p>
            <p className="links-list-words">{cameWords(link)}</p>
          </div>
          {asked === link.linkId ? (
            <Sure
              link={link}
              onKeep={() => setAsked(null)}
              onSure={() => {
                setAsked(null)
                onWithdraw(link.linkId)
              }}
            />
          ) : (
            <button type="button" className="button button-lined" aria-label={`Withdraw the ${link.role} link of ${dayWords(link.createdMs)}`} onClick={() => setAsked(link.linkId)}>
              Withdraw…
            </button>
          )}
        </li>
      ))}
    </ul>
  )
}

/** Asked before anybody is put out; the focus comes to the answer that changes nothing. */
function Sure({ link, onKeep, onSure }: { readonly link: MadeLink; readonly onKeep: () => void; readonly onSure: () => void }) {
  const keep = useRef<HTMLButtonElement>(null)
  useEffect(() => keep.current?.focus(), [])
  return (
    <div className="links-list-sure" role="group" aria-label={`Withdraw this ${link.role} link?`}>
      <button ref={keep} type="button" className="button" onClick={onKeep}>Keep it</button>
      <button type="button" className="button button-lined" onClick={onSure}>{outWords(link)}</button>
    </div>
  )
}

const dayWords = (ms: number): string => new Date(ms).toLocaleDateString(undefined, { day: 'numeric', month: 'short', year: 'numeric' })

function momentWords(ms: number): string {
  return new Date(ms).toLocaleString(undefined, { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })
}

function stateWords({ state, createdMs, expiresMs }: MadeLink): string {
  const made = `made ${dayWords(createdMs)}, good until ${dayWords(expiresMs)}`
  return state === 'closed' ? `${made}; lets nobody new in` : made
}

/** "Pell, 25 Nov, 14:20; Saskia, 25 Nov, 14:31; 3 more" */
function cameWords({ people, seats }: MadeLink): string {
  if (seats === 0) return 'nobody came by it yet'
  const named = people.map(({ name, cameMs }) => `${name}, ${momentWords(cameMs)}`)
  return [...named, ...(seats > people.length ? [`${seats - people.length} more`] : [])].join('; ')
}

function outWords({ people, seats }: MadeLink): string {
  if (seats === 0) return 'Withdraw it'
  return seats === 1 ? `Withdraw it: ${people[0]?.name ?? 'one person'} is out` : `Withdraw it: ${seats} people are out`
}
