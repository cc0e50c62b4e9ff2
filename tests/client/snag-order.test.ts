import { expect, it } from 'vitest'
import type { Snag } from '../../shared-core/predict/snag.ts'
import { newestFirst, seenAtFirst, seenNext } from '../../client/snags/newestFirst.ts'

const snag = (key: string, severity: Snag['severity']): Snag =>
  ({ key, rule: 'spill', severity, message: key, action: '', value: 0, threshold: 0, unit: '', about: [] })
const keys = (snags: readonly Snag[]) => snags.map(({ key }) => key).join(' ')

it('the loudest come first; among equals what came up last, else as the checks sort them', () => {
  const old = [snag('s1', 'stop'), snag('l1', 'look'), snag('l2', 'look')]
  const first = seenAtFirst('dusk', old)
  expect(keys(newestFirst(first))).toBe('s1 l1 l2')
  const next = seenNext(first, 'dusk', [...old, snag('l3', 'look'), snag('n1', 'note')])
  expect(keys(newestFirst(next))).toBe('s1 l3 l1 l2 n1')
})

it('what went quiet and comes back is new; another look starts afresh', () => {
  const [one, two] = [snag('l1', 'look'), snag('l2', 'look')]
  const without = seenNext(seenAtFirst('dusk', [one, two]), 'dusk', [one])
  expect(keys(newestFirst(seenNext(without, 'dusk', [one, two])))).toBe('l2 l1')
  expect(keys(newestFirst(seenNext(without, 'first-light', [one, two])))).toBe('l1 l2')
})
