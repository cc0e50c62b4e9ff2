import * as Y from 'yjs'
import { planRoot } from '../../shared-core/document/planRoot.ts'
import { writePlanToDocument } from '../../shared-core/document/writePlan.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { SCHEMA_VERSION } from '../../shared-core/plan/schema/plan.ts'

/**
 * Shared documents as a broken or hostile device could leave them. Whoever reads documents, draws them or passes them
 * on must come through all of these.
 */
export interface HostileDocument {
  readonly name: string
  /** A fresh document each time. */
  readonly make: () => Y.Doc
  /** What nobody may ever see of it. */
  readonly poison?: string
}

const POISON = 'poison-that-nobody-may-see'

export const hostileDocuments: readonly HostileDocument[] = [
  damaged('a text where a number belongs', (at) => at('looks', 'dusk', 'lights', 'c').set('energyJoules', POISON), POISON),
  damaged('NaN in a place', (at) => at('looks', 'dusk', 'lights', 'c', 'place').set('xMetres', NaN)),
  damaged('infinity in a camera', (at) => at('looks', 'dusk', 'camera').set('fNumber', Infinity)),
  damaged('numbers out of all bounds', (at) => {
    at('looks', 'dusk', 'camera').set('isoSpeed', 1e300)
    at('room').set('heightMetres', -4)
    at('looks', 'dusk', 'lights', 'a').set('rollDegrees', -1e9)
  }),
  damaged('a whole number with a fraction', (at) => at('heads', 'head-1000').set('count', 2.7)),
  damaged('a huge text', (at) => at().set('title', 'x'.repeat(2_000_000))),
  damaged('a huge key', (at) => at('looks').set(POISON.repeat(10_000), 1), POISON),
  damaged('markup in a name', (at) => at('looks', 'dusk').set('name', '<img src=x onerror=alert(1)>')),
  damaged('a way into the prototype', (at) => {
    at('looks').set('__proto__', new Y.Map([['polluted', POISON]]))
    at('looks', 'dusk', 'lights').set('constructor', new Y.Map([['letter', 'Z']]))
    at('gels').set('toString', POISON)
  }, POISON),
  damaged('half a light', (at) => at('looks', 'dusk', 'lights').set('half', new Y.Map([['letter', 'H'], ['note', POISON]])), POISON),
  damaged('half a look', (at) => at('looks').set('half', new Y.Map([['name', POISON]])), POISON),
  damaged('a plain object where a map belongs', (at) => at('looks', 'dusk').set('camera', { fNumber: 8, name: POISON }), POISON),
  damaged('a shared text where a text belongs', (at) => at().set('title', new Y.Text(POISON)), POISON),
  damaged('a shared list where a map belongs', (at) => at('looks', 'dusk').set('lights', Y.Array.from([POISON])), POISON),
  damaged('bytes', (at) => at('looks', 'dusk', 'lights', 'a').set('gelIds', new Uint8Array([1, 2, 3]))),
  damaged('big integers', (at) => at('looks', 'dusk', 'camera').set('isoSpeed', 200n)),
  damaged('lists inside lists without end', (at) => at('looks', 'dusk', 'lights', 'a').set('gelIds', nestedList(2_000))),
  damaged('a list of too many gels', (at) => at('looks', 'dusk', 'lights', 'a').set('gelIds', Array.from({ length: 5_000 }, () => 'moss'))),
  damaged('maps inside maps without end', (at) => at('looks', 'dusk').set('camera', nestedMap(400))),
  damaged('too many lights', (at) => {
    const lights = at('looks', 'dusk', 'lights')
    const light = lights.get('a') as Y.Map<unknown>
    for (let index = 0; index < 500; index += 1) lights.set(`l${index}`, light.clone())
  }),
  damaged('keys that no version knows', (at) => at('looks', 'dusk', 'lights', 'a').set('strange', POISON), POISON),
  damaged('kit that is gone', (at) => {
    at('heads').delete('head-1000')
    at('modifiers').delete('octa-100')
    at('gels').delete('violet')
  }),
  damaged('a light metered nowhere', (at) => at('looks', 'dusk', 'lights', 'a').set('serves', POISON), POISON),
  damaged('a head without range', (at) => at('heads', 'head-1000').set('lowestEnergyJoules', 5_000)),
  damaged('no kit at all', (at) => {
    at().set('heads', new Y.Map())
    at().set('modifiers', new Y.Map())
  }),
  damaged('no looks at all', (at) => at().set('looks', new Y.Map())),
  damaged('clashing letters everywhere', (at) => {
    for (const id of ['a', 'b', 'c', 'd']) at('looks', 'dusk', 'lights', id).set('letter', 'A')
  }),
  damaged('a version that is no number', (at) => at().set('schemaVersion', POISON), POISON),
  {
    name: 'nothing but noise',
    poison: POISON,
    make: () => {
      const doc = new Y.Doc()
      const root = planRoot(doc)
      root.set('schemaVersion', SCHEMA_VERSION)
      for (let index = 0; index < 2_000; index += 1) root.set(`${POISON}${index}`, [index])
      return doc
    },
  },
  {
    name: 'a list where the plan belongs',
    poison: POISON,
    make: () => {
      const doc = new Y.Doc()
      doc.getArray('plan').insert(0, [POISON])
      const copy = new Y.Doc()
      Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc))
      return copy
    },
  },
]

type At = (...path: string[]) => Y.Map<unknown>

/** The demo job, damaged in one way, as it arrives at somebody else. */
function damaged(name: string, damage: (at: At) => void, poison?: string): HostileDocument {
  const make = (): Y.Doc => {
    const doc = new Y.Doc()
    writePlanToDocument(doc, demoPlan)
    damage((...path) => path.reduce<Y.Map<unknown>>((map, key) => map.get(key) as Y.Map<unknown>, planRoot(doc)))
    const copy = new Y.Doc()
    Y.applyUpdate(copy, Y.encodeStateAsUpdate(doc))
    return copy
  }
  return poison === undefined ? { name, make } : { name, make, poison }
}

function nestedList(depth: number): unknown[] {
  let list: unknown[] = []
  for (let level = 0; level < depth; level += 1) list = [list]
  return list
}

function nestedMap(depth: number): Y.Map<unknown> {
  let map = new Y.Map<unknown>()
  for (let level = 0; level < depth; level += 1) map = new Y.Map([['deeper', map]])
  return map
}
