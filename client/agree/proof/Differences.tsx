import { useMemo } from 'react'
import { VISIBILITY_WORDS } from '../../../shared-core/compare/visibility.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { usePlainWords } from '../client/plainWords.ts'
import { useLookEffects } from '../compare/useLookEffects.ts'

interface DifferencesProps {
  readonly from: { readonly plan: Plan; readonly lookId: string }
  readonly plan: Plan
  readonly lookId: string
}

/** Told at once; the others behind a fold. */
const FIRST = 3

/** What tells a look from another, what shows most first. */
export function Differences({ from, plan, lookId }: DifferencesProps) {
  const isPlain = usePlainWords()
  const { plan: before, lookId: lookBefore } = from
  const asked = useMemo(() => ({ before, lookBefore, after: plan, lookAfter: lookId }), [before, lookBefore, plan, lookId])
  const { effects, share, trouble } = useLookEffects(asked)
  const name = before.looks[lookBefore]?.name ?? 'the first'
  if (trouble !== '') return <p className="proof-waiting" role="status">{trouble}</p>
  if (effects === null) return <p className="proof-waiting" role="status">Comparing with {name}{share === null ? '' : ` (${Math.round(share * 100)} %)`}…</p>
  const changes = effects.changes.map(({ key, visibility, plain, ...trade }) => ({ key, visibility, ...(isPlain ? plain : trade) }))
  if (changes.length === 0) return <p className="proof-waiting">The same as {name}</p>
  const seen = changes.filter(({ visibility }) => visibility !== 'not-visible')
  return (
    <section className="proof-differences" aria-label={`What tells it from ${name}`}>
      <p className="proof-differences-title">Against {name}: {countWords(seen.length, changes.length)}</p>
      <ol>{changes.slice(0, FIRST).map(row)}</ol>
      {changes.length > FIRST && (
        <details>
          <summary>{changes.length - FIRST} more</summary>
          <ol start={FIRST + 1}>{changes.slice(FIRST).map(row)}</ol>
        </details>
      )}
    </section>
  )

  function row({ key, words, visibility, effects: does }: (typeof changes)[number]) {
    return (
      <li key={key} data-visibility={visibility}>
        <span className="proof-change">{words}</span>
        <span className="proof-change-does">{visibility === 'not-visible' ? VISIBILITY_WORDS[visibility] : [VISIBILITY_WORDS[visibility], does.slice(0, 2).join(', ')].filter(Boolean).join(': ')}</span>
      </li>
    )
  }
}

function countWords(seen: number, all: number): string {
  const differences = `${all} ${all === 1 ? 'difference' : 'differences'}`
  return seen === all ? differences : `${differences}, ${seen === 0 ? 'none' : seen} to be seen`
}
