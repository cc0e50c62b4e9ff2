import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Light, Look } from '../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { createPredictor } from '../../shared-core/predict/predict.ts'
import { lookChange, type LookChange } from '../../shared-core/stands/lookChange.ts'
import { afterChange, riggedSet } from '../../shared-core/stands/moves/rigged.ts'
import { readingsAgain } from '../../shared-core/stands/moves/readingsAgain.ts'
import { planOfTwoLooks } from './lookPairs.ts'

/** What stands of a look, written down here anew from the plan's own fields: by letter, without names of things. */
function standing(look: Look): unknown {
  const lights = Object.values(look.lights).filter(({ on }) => on)
    .map(({ plane: _p, serves: _s, wantedStops: _w, note: _n, setUpOrder: _o, on: _on, ...hands }) => seen(hands))
  const { intent: _i, ...backdrop } = look.backdrop
  return { lights: byText(lights), pieces: byText(Object.values(look.pieces)), backdrop, camera: cameraOf(look.camera), mark: [look.subject.xMetres, look.subject.yMetres] }
}

const cameraOf = ({ place, aim, focalLengthMillimetres, fNumber, shutterSeconds, isoSpeed, whiteBalanceKelvin }: Look['camera']): unknown =>
  ({ place, aim, focalLengthMillimetres, fNumber, shutterSeconds, isoSpeed, whiteBalanceKelvin })
/** Where a sheet would sit, and how wide a grid would open, is nowhere to be seen while there is none. */
const seen = <Rigged extends Pick<Light, 'gelIds' | 'gelPlace' | 'grid'>>({ gelPlace, grid, ...light }: Rigged) =>
  ({ ...light, gelPlace: light.gelIds.length === 0 ? null : gelPlace, grid: grid.kind === 'none' ? null : grid })
const byText = (things: readonly object[]): readonly object[] => [...things].sort((a, b) => (sorted(a) < sorted(b) ? -1 : 1))
const sorted = (thing: unknown): string => JSON.stringify(thing, (_, value: unknown) =>
  value !== null && typeof value === 'object' && !Array.isArray(value) ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) : value)

function followed(plan: Plan, change: LookChange): unknown {
  const end = change.moves.reduce((set, move) => afterChange(set, move.change), riggedSet(plan.looks[change.fromId]!))
  return { lights: byText(Object.values(end.lights).map(seen)), pieces: byText(Object.values(end.pieces)), backdrop: end.backdrop, camera: end.camera, mark: [end.mark.xMetres, end.mark.yMetres] }
}

const runs = { numRuns: 150 }
const everyPair = (check: (plan: Plan, change: LookChange, x: Look, y: Look) => void): void =>
  fc.assert(fc.property(planOfTwoLooks, (plan) => check(plan, lookChange(plan, 'x', 'y', 'metric'), plan.looks['x']!, plan.looks['y']!)), runs)

describe('the moves from any look to any other', () => {
  it('lead to exactly that look', () => everyPair((plan, change, _x, y) => {
    expect(sorted(followed(plan, change))).toBe(sorted(standing(y)))
  }))

  it('are none where two looks stand alike, whatever their lights are for', () => {
    const dusk = demoPlan.looks['dusk']!
    const again = { ...dusk, name: 'Again', lights: { ...dusk.lights, a: { ...dusk.lights['a']!, wantedStops: 1, note: 'moved' } } }
    const change = lookChange({ ...demoPlan, looks: { x: dusk, y: again } }, 'x', 'y', 'metric')
    expect([change.moves, change.minutes]).toEqual([[], 0])
  })

  it('leave alone what does not change', () => everyPair((_plan, { moves }, x, y) => {
    const same = Object.keys(x.lights).filter((id) => x.lights[id]!.on && sorted(x.lights[id]) === sorted(y.lights[id]))
    expect(moves.filter(({ thing }) => same.includes(thing)).map(({ id }) => id)).toEqual([])
  }))

  it('wait for what they depend on, and nobody is at two places at once', () => everyPair((_plan, { moves, dependencies, minutes, serialMinutes }) => {
    const of = new Map(moves.map((move) => [move.id, move]))
    expect(of.size).toBe(moves.length)
    for (const { before, after, lagMinutes } of dependencies) {
      expect(of.get(after)!.startMinutes).toBeGreaterThanOrEqual(of.get(before)!.endMinutes + lagMinutes - 1e-9)
    }
    for (const person of ['first', 'second']) {
      const mine = moves.filter(({ hands }) => hands === person || hands === 'both')
      mine.slice(1).forEach((move, i) => expect(move.startMinutes).toBeGreaterThanOrEqual(mine[i]!.endMinutes - 1e-9))
    }
    expect(minutes).toBe(Math.max(0, ...moves.map(({ endMinutes }) => endMinutes)))
    expect(minutes).toBeLessThanOrEqual(serialMinutes + 1e-9)
    expect(minutes).toBeGreaterThanOrEqual(moves.reduce((sum, move) => sum + move.minutes * move.people, 0) / 2 - 1e-9)
  }))

  // A boom takes two, a gel waits for a cool head: common practice, no source.
  it('take both people to a boom and let a head cool before its gel', () => everyPair((plan, { moves }, x) => {
    for (const move of moves) {
      if ((move.kind === 'build' || move.kind === 'strike') && move.words.join().includes('boom')) expect(move.people).toBe(2)
      if (move.kind !== 'refit') continue
      const down = moves.find(({ id }) => id === `${move.thing}.power-down`)!
      const lamp = plan.heads[x.lights[move.thing]!.headId]!.modellingLamp
      expect(move.startMinutes - down.endMinutes).toBeGreaterThanOrEqual((lamp === 'halogen' ? 5 : 1) - 1e-9)
    }
  }))

  it('use no more of a modifier than there is, nor than either look asks for', () => everyPair((plan, { moves }, x, y) => {
    let set = riggedSet(x)
    const used = (id: string, lights: readonly { readonly modifierId: string }[]) => lights.filter(({ modifierId }) => modifierId === id).length
    for (const move of moves) {
      set = afterChange(set, move.change)
      for (const id of Object.keys(plan.modifiers)) {
        const most = Math.max(plan.modifiers[id]!.count, ...[x, y].map((look) => used(id, Object.values(look.lights).filter(({ on }) => on))))
        expect(used(id, Object.values(set.lights))).toBeLessThanOrEqual(most)
      }
    }
  }))

  it('never leave the talent in the dark: some lamp that is not the background’s, or the working light, at every moment', () => everyPair((_plan, { moves, lights }, x, y) => {
    // Dark from the beginning of power-down or strike to the end of power-up; all heads of these looks have a lamp.
    const lit: (readonly [number, number])[] = []
    for (const { thing, fromId, toId } of lights) {
      const down = moves.find((move) => move.thing === thing && (move.kind === 'power-down' || move.kind === 'strike'))
      const up = moves.find((move) => move.thing === thing && move.kind === 'power')
      if (fromId !== null && x.lights[fromId]!.plane !== 'background') lit.push([0, down?.startMinutes ?? Infinity])
      if (toId !== null && y.lights[toId]!.plane !== 'background' && (down !== undefined || fromId === null)) lit.push([up!.endMinutes, Infinity])
    }
    const on = moves.find(({ kind }) => kind === 'working-light-on')
    if (on !== undefined) lit.push([on.endMinutes, moves.find(({ kind }) => kind === 'working-light-off')?.startMinutes ?? Infinity])
    // Where a look begins without a lamp, nothing is done before the working light is on.
    const begin = lit.some(([from]) => from === 0) ? 0 : Math.min(...moves.filter(({ kind }) => kind !== 'working-light-on').map(({ startMinutes }) => startMinutes))
    for (const { startMinutes, endMinutes } of moves) {
      for (const moment of [startMinutes, (startMinutes + endMinutes) / 2, endMinutes]) {
        if (moment >= begin) expect(lit.some(([from, to]) => from <= moment && moment <= to), `at ${moment} of ${JSON.stringify(lit)}`).toBe(true)
      }
    }
  }))
})

describe('a modifier that is there once', () => {
  it('goes from one light to the other and back, with both undressed before either is dressed', () => {
    const dusk = demoPlan.looks['dusk']!
    const [a, b] = [dusk.lights['a']!, dusk.lights['b']!]
    const swap = { ...dusk, lights: { ...dusk.lights, a: { ...a, modifierId: b.modifierId, grid: b.grid }, b: { ...b, modifierId: a.modifierId, grid: a.grid } } }
    const plan = { ...demoPlan, looks: { x: dusk, y: swap } }
    const change = lookChange(plan, 'x', 'y', 'metric')
    const undressed = change.moves.filter(({ kind }) => kind === 'undress')
    expect(undressed.map(({ name }) => name).sort()).toEqual(['A', 'B'])
    for (const dressed of change.moves.filter(({ kind }) => kind === 'refit')) {
      for (const { endMinutes } of undressed) expect(dressed.startMinutes).toBeGreaterThanOrEqual(endMinutes)
    }
    expect(sorted(followed(plan, change))).toBe(sorted(standing(swap)))
  })
})

/**
 * The demo's change, dusk to first light. The job's story guesses "about 10 moves, 18 minutes for two". Counted here: 12
 * moves, since powering down and up are moves of their own; 12.5 minutes of hands and 3 readings of a minute make 15.5.
 * What is left to 18 is a test frame and what goes wrong, which no table knows.
 */
describe('the demo’s change from dusk to first light', () => {
  const change = lookChange(demoPlan, 'dusk', 'first-light', 'metric')
  const predict = createPredictor()
  const readings = readingsAgain(predict(demoPlan, 'dusk'), predict(demoPlan, 'first-light'), change.lights, change.moves)

  it('is about ten moves and about eighteen minutes for two', () => {
    expect(change.moves.length).toBeGreaterThanOrEqual(8)
    expect(change.moves.length).toBeLessThanOrEqual(13)
    const minutes = change.minutes + readings.reduce((sum, reading) => sum + reading.minutes, 0)
    // A look change takes 15 to 25 minutes with metering: common practice, no source.
    expect(minutes).toBeGreaterThanOrEqual(15)
    expect(minutes).toBeLessThanOrEqual(25)
    expect(change.isShortest).toBe(true)
  })

  it('forgets neither the flag nor the gel on D, leaves A alone, and has A light the talent meanwhile', () => {
    expect(change.moves.some(({ name, kind }) => name.startsWith('Black flag') && kind === 'piece-away')).toBe(true)
    expect(change.moves.some(({ name, words }) => name === 'D' && words.some((line) => line === 'Moss out, Pistachio in at the head'))).toBe(true)
    expect(change.moves.some(({ name }) => name === 'A')).toBe(false)
    expect(change.talentLight).toEqual({ by: 'kept', letters: ['A'] })
  })

  it('puts the board where C stood only once C is gone, and the scrim when D and the flag are out of its way', () => {
    const at = (name: string) => change.moves.find((move) => move.name.startsWith(name))!
    expect(at('White board').startMinutes).toBeGreaterThanOrEqual(at('C').endMinutes)
    const scrim = at('Scrim')
    expect(scrim.hands).toBe('both')
    expect(scrim.startMinutes).toBeGreaterThanOrEqual(Math.max(at('Black flag').endMinutes, change.moves.find(({ id }) => id === 'd.place')!.endMinutes))
  })

  it('asks only for the readings that could have changed: B, D, and the sum where A serves', () => {
    expect(readings.map(({ lights, areaId }) => `${lights} ${areaId}`)).toEqual(['B alone background-centre', 'D alone background-centre', 'all lights nose'])
    expect(readingsAgain(predict(demoPlan, 'dusk'), predict(demoPlan, 'dusk'), lookChange(demoPlan, 'dusk', 'dusk', 'metric').lights, [])).toEqual([])
  })
})
