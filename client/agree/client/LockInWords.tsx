import { askAgainPlainly, VISIBILITY_WORDS } from '../../../shared-core/compare/visibility.ts'
import { ask } from '../../session/pageStore.ts'
import { useBoard } from '../../session/useBoard.ts'
import { ownScreenCheck } from '../../notes/engine/locks.ts'
import { useNotes } from '../../notes/useNotes.ts'
import type { SinceLock } from '../lock/useSinceLock.ts'
import { isAsLocked } from './mayBeAgreed.ts'

/** Told at once; the others on the page of what is agreed. */
const FIRST = 3

/** What is agreed on this look, what has changed since, and whether this person is asked; without a number of light. */
export function LockInWords({ since }: { readonly since: SinceLock | null }) {
  const isReopened = useBoard((board) => board.reopened !== null)
  const isScreenChecked = useNotes((notes) => ownScreenCheck(notes.kept, notes.seat.seatId) !== null)
  return (
    <section className="lock-in-words" aria-labelledby="lock-in-words">
      <h2 id="lock-in-words" className="client-face-heading" tabIndex={-1}>{since === null ? 'Not agreed yet' : `Lock ${since.lock.lock.number}`}</h2>
      {since === null
        ? <p className="client-face-soft">Say what you think: nothing is fixed until the photographer locks it.</p>
        : <>
            <Standing since={since} />
            {!isReopened && <Since since={since} />}
          </>}
      <p className="lock-in-words-more">
        <button type="button" className="button client-face-quiet" onClick={() => ask({ kind: 'agreed' })}>All that was agreed</button>
        {!isScreenChecked && <button type="button" className="button client-face-quiet" onClick={() => ask({ kind: 'screen-check' })}>Check this screen</button>}
      </p>
    </section>
  )
}

function Standing({ since }: { readonly since: SinceLock }) {
  const { lock, hasSaidYes } = since.lock
  return (
    <>
      <p>{standingWords(lock.by.name, hasSaidYes, isAsLocked(since))}</p>
      {lock.conditions !== '' && <p className="client-face-soft">Conditions: {lock.conditions}</p>}
    </>
  )
}

function standingWords(by: string, hasSaidYes: boolean, isAsItWas: boolean): string {
  if (hasSaidYes) return isAsItWas ? 'You said yes to this picture.' : 'You said yes to it as it was.'
  return isAsItWas ? `${by} has locked this picture and asks for your yes.` : `${by} has locked this look.`
}

/** What has changed, what shows most first. */
function Since({ since: { lock: { lock, hasSaidYes }, count, effects, trouble } }: { readonly since: SinceLock }) {
  if (trouble !== '') return <p className="client-face-soft" role="status">{trouble}</p>
  if (count === null) return null
  if (count === 0) return <p className="client-face-soft" role="status">Nothing has changed since.</p>
  if (effects === null) return <p className="client-face-soft" role="status">Something has changed; looking at what it does…</p>
  const again = askAgainPlainly(effects, lock.askAgainSteps, hasSaidYes)
  const seen = effects.changes.filter(({ visibility }) => visibility !== 'not-visible')
  return (
    <>
      <p className="lock-in-words-verdict" data-ask-again={again.isNeeded} role="status">{again.words}.</p>
      {!hasSaidYes && effects.visibility !== 'not-visible' && <p className="client-face-soft">What was locked can be seen, and said yes to, under all that was agreed.</p>}
      {seen.length > 0 && (
        <ol className="lock-in-words-changes" aria-label={`Changed since lock ${lock.number}`}>
          {seen.slice(0, FIRST).map(({ key, visibility, plain }) => (
            <li key={key}>
              {plain.words}: {VISIBILITY_WORDS[visibility]}
              {plain.effects.length > 0 && <span className="client-face-soft">{plain.effects.slice(0, 2).join(', ')}</span>}
            </li>
          ))}
        </ol>
      )}
      {seen.length > FIRST && <p className="client-face-soft">And {seen.length - FIRST} more</p>}
    </>
  )
}
