import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { createUndo, type Undo } from '../../shared-core/document/undo.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { crossChecks } from '../../shared-core/plan/reading/crossChecks.ts'
import { planSchema } from '../../shared-core/plan/schema/plan.ts'
import { randomEdit, randomFrom } from './randomEdits.ts'

const PEOPLE = 4
const STEPS = 120

interface Device {
  readonly doc: Y.Doc
  readonly undo: Undo
  /** Updates of others that have not got through yet; they may come late, twice and in any order. */
  readonly inbox: Uint8Array[]
}

/** Several people edit at once over a bad network, then everything gets through in the end. */
function afternoon(start: number): readonly Device[] {
  const random = randomFrom(start)
  const first = new Y.Doc()
  writePlanToDocument(first, demoPlan)
  const devices = Array.from({ length: PEOPLE }, (_, index): Device => {
    const doc = new Y.Doc()
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(first))
    return { doc, undo: createUndo(doc, { by: 'person', seatId: `seat-${index}` }), inbox: [] }
  })
  devices.forEach((device) => {
    device.doc.on('update', (update: Uint8Array, origin: unknown) => {
      if (origin === 'network') return
      for (const other of devices) if (other !== device) other.inbox.push(update)
    })
  })
  const receiveOne = ({ doc, inbox }: Device): void => {
    const index = Math.floor(random() * inbox.length)
    const update = inbox[index]
    if (!update) return
    Y.applyUpdate(doc, update, 'network')
    // One in five comes a second time.
    if (random() < 0.8) inbox.splice(index, 1)
  }
  for (let step = 0; step < STEPS; step += 1) {
    devices.forEach((device, index) => {
      const { plan } = readPlanFromDocument(device.doc)
      const edit = plan && randomEdit(plan, random)
      if (edit) applyEditToDocument(device.doc, edit, { by: 'person', seatId: `seat-${index}` })
      if (random() < 0.1) device.undo.undo()
      if (random() < 0.05) device.undo.redo()
      if (random() < 0.6) receiveOne(device)
    })
  }
  for (const device of devices) while (device.inbox.length > 0) receiveOne(device)
  return devices
}

describe.each([1, 2, 3, 4, 5, 6])('afternoon %i of four people over a bad network', (start) => {
  const devices = afternoon(start)
  const states = devices.map(({ doc }) => readPlanFromDocument(doc))

  it('ends with the same plan and the same words on every device', () => {
    for (const state of states) expect(JSON.stringify(state)).toBe(JSON.stringify(states[0]))
  })

  it('ends with the same plan for who joins only now', () => {
    const late = new Y.Doc()
    Y.applyUpdate(late, Y.encodeStateAsUpdate(devices[2]!.doc))
    expect(JSON.stringify(readPlanFromDocument(late))).toBe(JSON.stringify(states[0]))
  })

  it('ends with a plan that holds together and is not the one it began with', () => {
    const { plan } = states[0]!
    expect(planSchema.safeParse(plan).error?.issues).toBeUndefined()
    expect(crossChecks(plan!)).toEqual([])
    expect(plan).not.toEqual(demoPlan)
  })
})
