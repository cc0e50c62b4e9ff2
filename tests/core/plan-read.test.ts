import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { migrate, migrations, type Migration } from '../../shared-core/plan/migrations/migrate.ts'
import { readJobFile, readPlan, writeJobFile } from '../../shared-core/plan/read.ts'
import { LIMITS, SCHEMA_VERSION } from '../../shared-core/plan/schema/plan.ts'

const frozenFolder = new URL('../frozen-plans/', import.meta.url)
const frozenFiles = readdirSync(frozenFolder).filter((name) => name.endsWith('.halfstop.json'))

/** The demo job as loose JSON, to be damaged. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any
const loose = (): any => JSON.parse(writeJobFile(demoPlan))

function problemsOf(value: unknown): readonly { readonly path: string; readonly message: string }[] {
  const reading = readPlan(value)
  return reading.ok ? [] : reading.problems
}

describe('frozen plans', () => {
  it('has one for every version so far', () => {
    for (let version = 1; version <= SCHEMA_VERSION; version += 1) {
      expect(frozenFiles.some((name) => name.startsWith(`version-${version}-`))).toBe(true)
    }
  })

  it.each(frozenFiles)('%s opens, with nothing lost', (name) => {
    const reading = readJobFile(readFileSync(new URL(name, frozenFolder), 'utf8'))
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems))
    expect(reading.repairs).toEqual([])
    expect(reading.plan.title).toBe('Late Harvest')
    expect(reading.plan.looks['dusk']?.lights['c']).toMatchObject({
      letter: 'C', gelIds: ['violet'], place: { xMetres: 2, yMetres: -0.25, zMetres: 1.7 }, wantedStops: -2,
    })
    expect(Object.keys(reading.plan.looks)).toHaveLength(3)
  })
})

describe('a plan from before modifiers and gels were metered', () => {
  it.each(frozenFiles.filter((name) => !name.startsWith('version-3-')))('%s comes up with nothing learned of them', (name) => {
    const reading = readJobFile(readFileSync(new URL(name, frozenFolder), 'utf8'))
    if (!reading.ok) throw new Error(JSON.stringify(reading.problems))
    const { modifiers, gels } = reading.plan
    const learned = [...Object.values(modifiers), ...Object.values(gels)].map(({ learnedStops }) => learnedStops)
    expect(learned.length).toBeGreaterThan(20)
    expect(learned.every((stops) => stops === 0)).toBe(true)
  })

  it('what a later one learned is kept', () => {
    const reading = readJobFile(readFileSync(new URL('version-3-late-harvest.halfstop.json', frozenFolder), 'utf8'))
    expect(reading.ok && [reading.plan.heads['head-1000'], reading.plan.modifiers['strip-35x140'], reading.plan.gels['violet']].map((piece) => piece?.learnedStops))
      .toEqual([0.1, 0.4, -0.2])
  })
})

describe('job files', () => {
  it('come back as they were written', () => {
    const reading = readJobFile(writeJobFile(demoPlan))
    expect(reading.ok && reading.plan).toEqual(demoPlan)
  })

  it('read the same whatever order their keys were typed in', () => {
    const { looks, ...rest } = loose()
    const shuffled = { looks: Object.fromEntries(Object.entries(looks).reverse()), ...rest }
    const reading = readPlan(shuffled)
    expect(reading.ok && writeJobFile(reading.plan)).toBe(writeJobFile(demoPlan))
  })

  it.each([
    ['not JSON', '{"schemaVersion": 1', 'not JSON'],
    ['a list', '[]', 'group of values'],
    ['nothing', '', 'not JSON'],
    ['null', 'null', 'group of values'],
    ['a file without a version', '{}', 'which version'],
    ['a file from a newer program', JSON.stringify({ ...demoPlan, schemaVersion: 99 }), 'newer version'],
    ['nesting without end', `{"schemaVersion":1,"brief":${'['.repeat(5_000)}${']'.repeat(5_000)}}`, 'nested too deep'],
    ['a way into a prototype', '{"schemaVersion":1,"looks":{"__proto__":{"polluted":true}}}', 'forbidden key'],
    ['far too much', ' '.repeat(24_000_001), 'too large'],
  ])('refuses %s', (_what, text, words) => {
    const reading = readJobFile(text)
    expect(reading.ok ? [] : reading.problems.map(({ message }) => message).join(' ')).toContain(words)
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false)
  })
})

describe('problems', () => {
  it('name the place and what it wants', () => {
    const plan = loose()
    plan.looks.dusk.lights.c.energyJoules = 'much'
    plan.looks.dusk.lights.b.rollDegrees = 999
    plan.looks.dusk.lights.a.plane = 'sideways'
    plan.heads['head-1000'].count = 1.5
    plan.room.ceilingFan = true
    delete plan.room.name
    expect(problemsOf(plan)).toEqual(
      expect.arrayContaining([
        { path: 'looks.dusk.lights.c.energyJoules', message: 'wants a number' },
        { path: 'looks.dusk.lights.b.rollDegrees', message: 'is more than 360' },
        { path: 'looks.dusk.lights.a.plane', message: 'wants one of: background, edge, shadow-side, front, product' },
        { path: 'heads.head-1000.count', message: 'wants a whole number' },
        { path: 'room', message: 'holds what this version does not know: ceilingFan' },
        { path: 'room.name', message: 'is missing' },
      ]),
    )
  })

  it('are found where one part of the plan names another', () => {
    const plan = loose()
    plan.looks.dusk.lights.a.headId = 'gone'
    plan.looks.dusk.lights.b.modifierId = 'gone'
    plan.looks.dusk.lights.c.gelIds = ['violet', 'gone']
    plan.looks.dusk.lights.d.serves = 'gone'
    plan.heads['old-head-1000'].lowestEnergyJoules = 1_000
    expect(problemsOf(plan).map(({ path }) => path).sort()).toEqual([
      'heads.old-head-1000.lowestEnergyJoules',
      'looks.dusk.lights.a.headId',
      'looks.dusk.lights.b.modifierId',
      'looks.dusk.lights.c.gelIds.1',
      'looks.dusk.lights.d.serves',
    ])
  })

  it('include counts past the limits, without reading what is there', () => {
    const plan = loose()
    plan.looks.dusk.lights = Object.fromEntries(Array.from({ length: LIMITS.lightsPerLook + 1 }, (_, index) => [`l${index}`, 0]))
    expect(problemsOf(plan)).toEqual([{ path: 'looks.dusk.lights', message: 'holds 41; 40 is the most' }])
  })

  it('are the answer to ids that a language has a meaning for', () => {
    const plan = loose()
    plan.looks.constructor = plan.looks.dusk
    expect(problemsOf(plan)).toEqual([{ path: 'looks.constructor', message: expect.stringContaining('no id') }])
  })

  it('are counted out at a hundred', () => {
    const plan = loose()
    plan.gels = Object.fromEntries(Array.from({ length: 300 }, (_, index) => [`g${index}`, {}]))
    expect(problemsOf(plan)).toHaveLength(100)
  })

  it('come for any value at all, and never as an error', () => {
    fc.assert(fc.property(fc.anything({ withNullPrototype: true, maxDepth: 6 }), (value) => {
      const reading = readPlan(value)
      expect(reading.ok ? [] : reading.problems).not.toHaveLength(0)
    }))
  })

  it('come for any leaf of another kind, or it reads as before', () => {
    fc.assert(fc.property(fc.nat(), fc.oneof(fc.string(), fc.double(), fc.constant(null), fc.boolean()), (index, value) => {
      const plan = loose()
      const leaves = leavesOf(plan)
      const [branch, key] = leaves[index % leaves.length]!
      branch[key] = value
      const reading = readPlan(plan)
      if (reading.ok) expect(JSON.parse(writeJobFile(reading.plan))).toEqual(JSON.parse(JSON.stringify(plan)))
      else expect(reading.problems.every(({ path, message }) => path !== '' && message !== '')).toBe(true)
    }), { numRuns: 120 })
  })
})

it('gives clashing letters apart and says so', () => {
  const plan = loose()
  plan.looks.dusk.lights.c.letter = 'A'
  const reading = readPlan(plan)
  // Light c is set up before light a, so it keeps the A; light a takes the first free letter, which is now C.
  expect(reading.ok && reading.plan.looks['dusk']?.lights['c']?.letter).toBe('A')
  expect(reading.ok && reading.plan.looks['dusk']?.lights['a']?.letter).toBe('C')
  expect(reading.ok && reading.repairs).toEqual(['Two lights of “Look 1, Dusk in an orchard” were lettered A: one is now C.'])
})

describe('migrations', () => {
  const steps: Migration[] = [
    { from: 1, why: 'a made-up change: titles became names', migrate: ({ title, ...rest }) => ({ ...rest, name: title }) },
    { from: 2, why: 'another: names are loud', migrate: (plan) => ({ ...plan, name: String(plan['name']).toUpperCase() }) },
  ]

  it('lead a plan up step by step', () => {
    const outcome = migrate({ schemaVersion: 1, title: 'Late Harvest', kept: 1 }, steps, 3)
    expect(outcome).toEqual({ ok: true, cameFrom: 1, plan: { schemaVersion: 3, name: 'LATE HARVEST', kept: 1 } })
  })

  it('start from the version a file has', () => {
    const outcome = migrate({ schemaVersion: 2, name: 'x' }, steps, 3)
    expect(outcome.ok && outcome.plan).toEqual({ schemaVersion: 3, name: 'X' })
  })

  it('refuse where a step is missing, and what is newer or says nothing', () => {
    expect(migrate({ schemaVersion: 1 }, [], 2).ok).toBe(false)
    expect(migrate({ schemaVersion: 4 }, steps, 3).ok).toBe(false)
    expect(migrate({ schemaVersion: 1.5 }, steps, 3).ok).toBe(false)
    expect(migrate({}, steps, 3).ok).toBe(false)
  })

  it('are there for every version before this one', () => {
    expect(migrations.map(({ from }) => from)).toEqual(Array.from({ length: SCHEMA_VERSION - 1 }, (_, index) => index + 1))
  })
})

function leavesOf(branch: Record<string, unknown>): [Record<string, unknown>, string][] {
  return Object.entries(branch).flatMap(([key, value]): [Record<string, unknown>, string][] =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? leavesOf(value as Record<string, unknown>)
      : [[branch, key]],
  )
}
