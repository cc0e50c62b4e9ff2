import { expect, it } from 'vitest'
import * as Y from 'yjs'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { upgradeDocument } from '../../shared-core/document/upgradeDocument.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
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
