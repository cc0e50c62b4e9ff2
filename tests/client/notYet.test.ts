import { describe, expect, it } from 'vitest'
import { insteadOfYes } from '../../client/agree/lock/notYet.ts'
import { commandOf } from '../../client/notes/engine/draft.ts'

describe('what is said instead of yes', () => {
  const about = { lookId: 'dusk', lockNumber: 2 }

  it('is a note on the look that names the lock', () => {
    expect(commandOf(insteadOfYes('not-yet', about, ' more plum '))).toMatchObject({ do: 'note.add', lookId: 'dusk', pin: { on: 'look' }, text: 'Not yet, lock 2: more plum' })
    expect(commandOf(insteadOfYes('question', { ...about, lockNumber: null }, 'why green?'))).toMatchObject({ text: 'Question: why green?' })
  })

  it('holds together without a word, and not with more than a note can hold', () => {
    expect(commandOf(insteadOfYes('not-yet', about, ' '))).toMatchObject({ text: 'Not yet, lock 2' })
    expect(commandOf(insteadOfYes('not-yet', about, 'x'.repeat(5_000)))).toBeNull()
  })
})
