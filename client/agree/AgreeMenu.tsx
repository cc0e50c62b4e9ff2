import { Popover, PopoverClose } from '../controls/Popover.tsx'
import { ask, type Asking } from '../session/pageStore.ts'
import './AgreeMenu.css'

/** The pages on which people come to agree, in the order in which they are offered. */
const pages: readonly { readonly opens: Asking; readonly title: string; readonly words: string }[] = [
  { opens: { kind: 'proof-sheet' }, title: 'Proof sheet', words: 'Looks side by side, and a vote on them' },
  { opens: { kind: 'stand-ins' }, title: 'Stand-ins', words: 'This look on other skin and hair' },
  { opens: { kind: 'agreed' }, title: 'Agreed', words: 'Locks, what changed since, That one' },
  { opens: { kind: 'screen-check' }, title: 'Screen check', words: 'Whether this screen can be trusted with colour' },
]

/** Everything by which people come to agree on a look, behind one word of the top bar. */
export function AgreeMenu() {
  return (
    <Popover
      label="Agree on this look"
      trigger={
        <button type="button" className="button">
          Agree
        </button>
      }
    >
      <ul className="agree-list">
        {pages.map(({ opens, title, words }) => (
          <li key={title}>
            <PopoverClose asChild>
              <button type="button" className="button agree-entry" onClick={() => ask(opens)}>
                <span>{title}</span>
                <span className="agree-entry-words">{words}</span>
              </button>
            </PopoverClose>
          </li>
        ))}
      </ul>
    </Popover>
  )
}

/** The same for a phone's sheet, all in sight. */
export function AgreeList() {
  return (
    <ul className="agree-list">
      {pages.map(({ opens, title, words }) => (
        <li key={title}>
          <button type="button" className="button button-lined agree-entry" onClick={() => ask(opens)}>
            <span>{title}</span>
            <span className="agree-entry-words">{words}</span>
          </button>
        </li>
      ))}
    </ul>
  )
}
