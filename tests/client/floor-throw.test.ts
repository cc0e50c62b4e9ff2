import { describe, expect, it } from 'vitest'
import { obstaclesOf } from '../../client/floor/throw/obstacles.ts'
import { throwPicture } from '../../client/floor/throw/paintThrow.ts'
import { SHOWN_STOPS, strengthAt, throwAt, throwField, throwSource } from '../../client/floor/throw/throwField.ts'
import { throwPlane } from '../../client/floor/throw/throwPlane.ts'
import type { Vector } from '../../shared-core/arithmetic/vector.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Modifier } from '../../shared-core/plan/schema/kit.ts'
import type { Light, Piece } from '../../shared-core/plan/schema/look.ts'

// Checked against laws of light: inverse square, the closed form of a Lambert disc, nothing behind a flag.

const at = (xMetres: number, yMetres: number, zMetres: number) => ({ xMetres, yMetres, zMetres })
type Thrown = Pick<Light, 'place' | 'aim' | 'rollDegrees' | 'grid'>
const light: Thrown = { place: at(0, 0, 1.5), aim: at(0, 4, 1.5), rollDegrees: 0, grid: { kind: 'none', openingDegrees: 40 } }
const modifier = (kind: Modifier['kind'], size: number, diffusers = 0): Modifier =>
  ({ name: kind, kind, count: 1, widthMetres: size, heightMetres: size, depthMetres: 0.2, diffusers, learnedStops: 0 })
const ahead = (metres: number): Vector => [0, metres, 1.5]
const stops = (times: number) => Math.log2(times)

const demoLook = demoPlan.looks[demoLookId]!
const emptySet = { pieces: {}, subject: { ...demoLook.subject, xMetres: 30 }, backdrop: { ...demoLook.backdrop, kind: 'none' as const } }
const room = { ...demoPlan.room, columns: {} }
const withPiece = (piece: Partial<Piece>) => {
  const usual: Piece = {
    kind: 'flag', label: '', place: at(0, 1, 1.5), facingDegrees: 0, tiltDegrees: 0, widthMetres: 0.6, heightMetres: 0.6,
    openDegrees: 180, front: '#161616', back: '#161616', transmittance: 0, ...piece,
  }
  return obstaclesOf({ ...emptySet, pieces: { p: usual } }, room)
}

describe('throws', () => {
  it('fall by two stops for twice the distance, far from a small front', () => {
    const source = throwSource('a', light, modifier('reflector', 0.18))
    expect(stops(throwAt(source, ahead(2), null) / throwAt(source, ahead(4), null))).toBeCloseTo(2, 1)
  })

  it('fall as a Lambert disc does, close to a large front', () => {
    // E/M on the axis of a uniform disc: r^2 / (r^2 + d^2), the disc-to-element configuration factor of the handbooks.
    const source = throwSource('a', light, modifier('umbrella-diffused', 1.6, 1))
    const factor = (d: number) => 0.8 ** 2 / (0.8 ** 2 + d ** 2)
    const drawn = stops(throwAt(source, ahead(1.2), null) / throwAt(source, ahead(3.6), null))
    expect(Math.abs(drawn - stops(factor(1.2) / factor(3.6)))).toBeLessThan(0.2)
  })

  it('leave nothing behind a front, but for an umbrella that is shot through', () => {
    expect(throwAt(throwSource('a', light, modifier('softbox', 0.9, 2)), ahead(-1), null)).toBe(0)
    expect(throwAt(throwSource('a', light, modifier('umbrella-shoot-through', 1, 1)), ahead(-1), null)).toBeGreaterThan(0)
  })

  it('close at half of what is printed on a honeycomb', () => {
    const gridded = throwSource('a', { ...light, grid: { kind: 'honeycomb', openingDegrees: 40 } }, modifier('reflector', 0.18))
    const aside = (degrees: number): Vector => [3 * Math.sin((degrees * Math.PI) / 180), 3 * Math.cos((degrees * Math.PI) / 180), 1.5]
    const onAxis = throwAt(gridded, aside(0), null)
    expect(throwAt(gridded, aside(10), null)).toBeGreaterThan(onAxis * 0.15)
    // Past 20 degrees only what the cells scatter.
    expect(throwAt(gridded, aside(25), null)).toBeLessThan(onAxis * 0.01)
  })

  it('stop at a flag and go on beside it', () => {
    const source = throwSource('a', light, modifier('reflector', 0.18))
    const flag = withPiece({})
    expect(throwAt(source, ahead(3), flag)).toBe(0)
    expect(throwAt(source, [1.6, 3, 1.5], flag)).toBeCloseTo(throwAt(source, [1.6, 3, 1.5], null), 9)
  })

  it('go on through a scrim by its transmittance', () => {
    const source = throwSource('a', light, modifier('reflector', 0.18))
    const scrim = withPiece({ kind: 'scrim', transmittance: 0.25, widthMetres: 2, heightMetres: 2 })
    expect(throwAt(source, ahead(3), scrim) / throwAt(source, ahead(3), null)).toBeCloseTo(0.25, 9)
  })

  it('stop at a column, and at the subject', () => {
    const source = throwSource('a', light, modifier('reflector', 0.18))
    const column = obstaclesOf(emptySet, { ...room, columns: { c: { label: '', xMetres: 0, yMetres: 1, widthMetres: 0.4, depthMetres: 0.4 } } })
    expect(throwAt(source, ahead(3), column)).toBe(0)
    const subject = obstaclesOf({ ...emptySet, subject: { ...demoLook.subject, xMetres: 0, yMetres: 1 } }, room)
    expect(throwAt(source, ahead(3), subject)).toBe(0)
  })
})

describe('a throw over a plane', () => {
  const bounds = { left: -2, top: -5, right: 2, bottom: 0 }
  const plane = throwPlane('floor', bounds, [0, 0, 1.5], 4_000)
  const source = throwSource('a', light, modifier('reflector', 0.18))
  const field = throwField(source, plane, obstaclesOf(emptySet, room), throwAt(source, ahead(2), null))
  const stopsAt = (x: number, y: number) => {
    const column = Math.floor(((x - bounds.left) / 4) * plane.columns)
    const row = Math.floor(((-y - bounds.top) / 5) * plane.rows)
    return field[row * plane.columns + column]!
  }

  it('lies at the height asked for, cell under cell', () => {
    const [x, y, z] = plane.placeOf(0, 0)
    expect(x).toBeCloseTo(bounds.left + 2 / plane.columns, 9)
    expect(-y).toBeCloseTo(bounds.top + 2.5 / plane.rows, 9)
    expect(z).toBe(1.5)
    expect(plane.columns * plane.rows).toBeLessThan(4_400)
  })

  it('is 0 where the light is metered and two stops down at twice the distance', () => {
    expect(Math.abs(stopsAt(0.01, 2))).toBeLessThan(0.15)
    expect(Math.abs(stopsAt(0.01, 4) + 2)).toBeLessThan(0.15)
  })

  it('is drawn stronger where there is more light, and not at all where there is none', () => {
    let before = -1
    for (let level = SHOWN_STOPS.least; level <= SHOWN_STOPS.most; level += 0.5) {
      expect(strengthAt(level)).toBeGreaterThan(before)
      before = strengthAt(level)
    }
    expect(strengthAt(SHOWN_STOPS.least)).toBe(0)
    const { rgba } = throwPicture(Float32Array.from([0, -20]), 2, 1, '#8040c0', 0)
    expect([...rgba.slice(0, 3)]).toEqual([0x80, 0x40, 0xc0])
    expect(rgba[3]).toBeGreaterThan(0)
    expect(rgba[7]).toBe(0)
  })

  it('is empty when nothing arrives', () => {
    expect(throwPicture(Float32Array.from([0]), 1, 1, '#ffffff', null).rgba[3]).toBe(0)
  })
})
