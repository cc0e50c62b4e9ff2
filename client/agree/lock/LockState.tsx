import { askAgain, VISIBILITY_WORDS } from '../../../shared-core/compare/visibility.ts'
import { useBoard } from '../../session/useBoard.ts'
import { ask } from '../../session/pageStore.ts'
import { useIsLocking, useSinceLock, type SinceLock } from './useSinceLock.ts'
import './lock.css'

/** Beside the look's name: its lock, and whether the picture has moved since. Opens what was agreed. */
export function LockState() {
  const lookId = useBoard((board) => board.lookId)
  const since = useSinceLock(lookId)
  const isLocking = useIsLocking(lookId)
  if (isLocking) return <span className="lock-state" role="status">Locking…</span>
  if (since === null) return null
  const { isNeeded, words } = stateOf(since)
  return (
    <button type="button" className="button lock-state" data-ask-again={isNeeded} onClick={() => ask({ kind: 'agreed' })}>
      Lock {since.lock.lock.number}{words === '' ? '' : ` · ${words}`}
    </button>
  )
}

function stateOf({ lock, count, effects }: SinceLock): { readonly isNeeded: boolean; readonly words: string } {
  if (count === null) return { isNeeded: false, words: '' }
  if (count === 0) return { isNeeded: false, words: 'unchanged' }
  if (effects === null) return { isNeeded: false, words: 'changed' }
  const { isNeeded } = askAgain(effects, lock.lock.askAgainSteps)
  return { isNeeded, words: isNeeded ? 'changed, ask again' : `changed, ${VISIBILITY_WORDS[effects.visibility]}` }
}
