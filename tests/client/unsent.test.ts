import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { PlanChange } from '../../shared-core/plan/edit.ts'
import { holdsUnsent } from '../../client/connection/unsent.ts'

function twoAlike(): readonly [Y.Doc, Y.Doc] {
  const relay = new Y.Doc()
  writePlanToDocument(relay, demoPlan)
  const here = new Y.Doc()
  Y.applyUpdate(here, Y.encodeStateAsUpdate(relay))
  return [relay, here]
}

const write = (doc: Y.Doc, change: PlanChange) => applyEditToDocument(doc, { name: 'test', changes: [change] }, { by: 'person', seatId: 'me' })
const fNumber = (set: number): PlanChange => ({ path: ['looks', demoLookId, 'camera', 'fNumber'], set })

describe('what a dropped copy still held', () => {
  it('is nothing when the relay has it all, and more', () => {
    const [relay, here] = twoAlike()
    write(here, fNumber(11))
    Y.applyUpdate(relay, Y.encodeStateAsUpdate(here))
    write(relay, fNumber(16))
    expect(holdsUnsent(here, relay)).toBe(false)
  })

  it('is a change the relay never took', () => {
    const [relay, here] = twoAlike()
    write(here, fNumber(11))
    expect(holdsUnsent(here, relay)).toBe(true)
    expect(holdsUnsent(relay, here)).toBe(false)
  })

  it('is a removal, too, though it adds nothing', () => {
    const [relay, here] = twoAlike()
    const lightId = Object.keys(demoPlan.looks[demoLookId]?.lights ?? {})[0] ?? ''
    write(here, { path: ['looks', demoLookId, 'lights', lightId], remove: true })
    expect(holdsUnsent(here, relay)).toBe(true)
  })
})
