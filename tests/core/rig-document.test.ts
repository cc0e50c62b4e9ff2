import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyRigEdits, createRigReader } from '../../shared-core/document/rigDocument.ts'
import { demoPlan as plan } from '../../shared-core/plan/demo/demoPlan.ts'
import { tickKey, type Tick } from '../../shared-core/rig/ticks.ts'

const origin = { by: 'person', seatId: 'seat' } as const
const [lookId, look] = Object.entries(plan.looks)[0]!
const [one, other] = Object.keys(look.lights) as [string, string]

function tickOf(lightId: string, name: string): Tick {
  return {
    lookId, by: { name, atMs: 1_000 }, subjectXMetres: 0, subjectYMetres: 0,
    stand: { kind: 'light', id: lightId, as: look.lights[lightId]! },
  }
}

describe('the rig in a shared document', () => {
  it('merges what two people ticked offline, whole', () => {
    const here = new Y.Doc()
    const there = new Y.Doc()
    applyRigEdits(here, [{ kind: 'ticks', key: tickKey(lookId, one), entry: tickOf(one, 'Tobin') }], origin)
    applyRigEdits(there, [{ kind: 'ticks', key: tickKey(lookId, other), entry: tickOf(other, 'Yara') }], origin)
    Y.applyUpdate(here, Y.encodeStateAsUpdate(there))
    Y.applyUpdate(there, Y.encodeStateAsUpdate(here))
    const read = createRigReader(here).read()
    expect(Object.values(read.ticks).map((tick) => tick.by.name).sort()).toEqual(['Tobin', 'Yara'])
    expect(createRigReader(there).read()).toEqual(read)
  })

  it('leaves out what it cannot read, and leaves it in the document', () => {
    const doc = new Y.Doc()
    doc.getMap('ticks').set('good.key', tickOf(one, 'Tobin'))
    doc.getMap('ticks').set('bad.key', { done: 'yes' })
    doc.getMap('ticks').set('__proto__', tickOf(one, 'Tobin'))
    doc.getMap('ticks').set('text', 'text')
    expect(Object.keys(createRigReader(doc).read().ticks)).toEqual(['good.key'])
    expect(doc.getMap('ticks').get('bad.key')).toEqual({ done: 'yes' })
  })

  it('keeps the identity of what did not change', () => {
    const doc = new Y.Doc()
    const reader = createRigReader(doc)
    applyRigEdits(doc, [{ kind: 'ticks', key: tickKey(lookId, one), entry: tickOf(one, 'Tobin') }], origin)
    const before = reader.read()
    expect(reader.read()).toBe(before)
    applyRigEdits(doc, [{ kind: 'ticks', key: tickKey(lookId, other), entry: tickOf(other, 'Yara') }], origin)
    const after = reader.read()
    expect(after).not.toBe(before)
    expect(after.ticks[tickKey(lookId, one)]).toBe(before.ticks[tickKey(lookId, one)])
    applyRigEdits(doc, [{ kind: 'ticks', key: tickKey(lookId, one), entry: null }], origin)
    expect(Object.keys(reader.read().ticks)).toEqual([tickKey(lookId, other)])
  })
})
