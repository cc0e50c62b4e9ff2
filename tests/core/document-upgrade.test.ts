import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import * as Y from 'yjs'
import { applyEditToDocument } from '../../shared-core/document/applyEdit.ts'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { readPlanFromDocument } from '../../shared-core/document/readPlan.ts'
import { upgradeDocument } from '../../shared-core/document/upgradeDocument.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { acceptSnag } from '../../shared-core/plan/edits/snags.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { SCHEMA_VERSION } from '../../shared-core/plan/schema/plan.ts'

const next = {
  from: SCHEMA_VERSION,
  why: 'a made-up change: titles became names',
  migrate: ({ title, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, name: title }),
}

it('leads a document up in place and touches only what the migration changes', () => {
  const doc = new Y.Doc()
  writePlanToDocument(doc, demoPlan)
  const looks = planRoot(doc).get('looks')
  const touched: string[] = []
  planRoot(doc).observeDeep((events) => events.forEach((event) => touched.push(...event.keys.keys())))
  expect(upgradeDocument(doc, [next], SCHEMA_VERSION + 1)).toEqual({ ok: true, cameFrom: SCHEMA_VERSION })
  expect(planRoot(doc).get('name')).toBe('Late Harvest')
  expect(planRoot(doc).get('schemaVersion')).toBe(SCHEMA_VERSION + 1)
  expect(planRoot(doc).get('looks')).toBe(looks)
  expect(touched.sort()).toEqual(['name', 'schemaVersion', 'title'])
})

it('does nothing to a document of this version or without a plan, and refuses a newer one', () => {
  const doc = new Y.Doc()
  expect(upgradeDocument(doc)).toEqual({ ok: true, cameFrom: null })
  writePlanToDocument(doc, demoPlan)
  const before = Y.encodeStateAsUpdate(doc)
  expect(upgradeDocument(doc).ok).toBe(true)
  expect(Y.encodeStateAsUpdate(doc)).toEqual(before)
  planRoot(doc).set('schemaVersion', SCHEMA_VERSION + 1)
  expect(upgradeDocument(doc).ok).toBe(false)
})

it('what an older version wrote takes the edits of this one', () => {
  const doc = new Y.Doc()
  Y.applyUpdate(doc, new Uint8Array(readFileSync(new URL('../frozen-plans/version-1-late-harvest.ydoc', import.meta.url))))
  expect(upgradeDocument(doc)).toEqual({ ok: true, cameFrom: 1 })
  const { plan } = readPlanFromDocument(doc)
  const accepted = acceptSnag(plan!, 'dusk', { key: 'spill:a:lips', severity: 'look', value: 2, message: 'seen' }, 'Ines', 1)
  if (!accepted.ok) throw new Error(accepted.message)
  expect(applyEditToDocument(doc, accepted.edit, { by: 'person', seatId: 'ines' }).missed).toEqual([])
  expect(readPlanFromDocument(doc).plan!.looks['dusk']!.accepted['spill:a:lips']?.by).toBe('Ines')
})
