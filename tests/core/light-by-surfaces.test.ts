import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { behindAt } from '../../shared-core/set/behind.ts'
import { frontLuminance } from '../../shared-core/transport/frontLuminance.ts'
import { lightAtPoint } from '../../shared-core/transport/lightAtPoint.ts'
import { bareTube, bounced, receiverAt, softbox } from './meteredLight.ts'
import { aLight, aPiece, at, emptyScene, meteredPlaces, portraitLights, studioScene } from './studioScene.ts'

/** What comes back from things, passes cloth and stands in the picture by itself, against integrals written out; and what holds for any light. */

describe('bounce', () => {
  const chin = receiverAt([0, -0.1, 1.5], [0, 0, -1])

  it('comes from what stands near: a white board under the chin, against the integral over the board', () => {
    const tube = aLight('x', { place: at(0, -1, 2.2), aim: at(0, -0.4, 1), modifier: bareTube })
    const board = aPiece('b', { place: at(0, -0.5, 1), facingDegrees: 0, tiltDegrees: 90, widthMetres: 0.8, heightMetres: 0.6 })
    const found = bounced(lightAtPoint(emptyScene([tube], [board]), 'x', chin), 'piece:b:front')
    // Inverse square and cosines at both ends, point by point.
    const side = 200
    let expected = 0
    for (let k = 0; k < side * side; k++) {
      const x = 0.4 * ((2 * (k % side) + 1) / side - 1)
      const y = -0.5 + 0.3 * ((2 * Math.floor(k / side) + 1) / side - 1)
      const fromTube = Math.hypot(x, y + 1, 1.2)
      const lit = 1.2 / fromTube / (4 * Math.PI * fromTube ** 2)
      const toChin = Math.hypot(x, y + 0.1, 0.5)
      expected += (lit * (0.5 / toChin) ** 2 * (0.48 / side ** 2)) / (Math.PI * toChin ** 2)
    }
    expect(found / expected).toBeGreaterThan(0.97)
    expect(found / expected).toBeLessThan(1.03)
  })

  it('is nothing from the back of a board, nor past another one', () => {
    const tube = aLight('x', { place: at(0, -1, 2.2), aim: at(0, -0.4, 1), modifier: bareTube })
    const board = aPiece('b', { place: at(0, -0.5, 1), tiltDegrees: 90, facingDegrees: 0, widthMetres: 0.8, heightMetres: 0.6 })
    const shade = aPiece('f', {
      kind: 'flag', place: at(0, -0.3, 1.3), tiltDegrees: 90, facingDegrees: 0, widthMetres: 3, heightMetres: 3,
    })
    const open = lightAtPoint(emptyScene([tube], [board]), 'x', chin)
    expect(bounced(open, 'piece:b:back')).toBe(0)
    expect(bounced(lightAtPoint(emptyScene([tube], [board, shade]), 'x', chin), 'piece:b:front')).toBe(0)
  })

  it('a narrower room throws more back', () => {
    const inRoom = (widthMetres: number) => {
      const scene = studioScene()
      const room = { ...scene.room, widthMetres, markFromLeftWallMetres: widthMetres / 2 }
      return bounced(lightAtPoint({ ...scene, room }, 'c', meteredPlaces.find(({ id }) => id === 'jaw-left')!))
    }
    expect(inRoom(4.4)).toBeGreaterThan(inRoom(6))
    expect(inRoom(6)).toBeGreaterThan(inRoom(12))
  })

  it('the subject shades its own front from the paper behind it', () => {
    const scene = studioScene()
    const dome = (id: string) => {
      const legs = lightAtPoint(scene, 'd', meteredPlaces.find((place) => place.id === id)!).viaSurfaces
      return legs.filter(({ surfaceId }) => surfaceId === 'backdrop').reduce((sum, { receipt }) => sum + receipt.domeOut, 0)
    }
    expect(dome('nose')).toBeLessThan(dome('rear-jaw-left') / 20)
  })
})

describe('a scrim lit from behind', () => {
  const scrim = aPiece('s', {
    kind: 'scrim', place: at(0, 0.75, 1.5), facingDegrees: 0, widthMetres: 1.8, heightMetres: 1.8, transmittance: 0.35,
  })
  // Near and to one side, so that left and right of the cloth differ.
  const head = aLight('x', { place: at(0.5, 1.55, 1.6), aim: at(0, 0.75, 1.5), modifier: bareTube })
  const scene = emptyScene([head], [scrim])
  const litAt = (x: number, z: number) => {
    const away = Math.hypot(x - 0.5, 0.8, z - 1.6)
    return (0.8 / away) / (4 * Math.PI * away ** 2)
  }

  it('stands in the picture as transmittance times what falls on its back', () => {
    const camera = { ...studioScene().camera, place: at(0, -3, 1.5), aim: at(0, 0, 1.5), focalLengthMillimetres: 50 }
    const seen = { ...scene, camera }
    for (const [frameX, frameY] of [[0.5, 0.5], [0.2, 0.4]] as const) {
      const behind = behindAt(seen, frameX, frameY)
      expect(behind.surfaceId).toBe('piece:s:front')
      const expected = 0.35 * litAt(behind.place[0], behind.place[2])
      expect(frontLuminance(seen, behind, 'x').exposureOfWhite / expected).toBeCloseTo(1, 2)
    }
  })

  it.each([0, -0.7, 0.7])('lights what is %d m off its middle as a diffusing wall, only through its cloth', (x0) => {
    const found = lightAtPoint(scene, 'x', receiverAt([x0, 0.3, 1.5], [0, 1, 0]))
    expect(found.direct.flat).toBe(0)
    const passed = found.viaSurfaces.filter(({ by }) => by === 'passed')
    expect(passed.map(({ surfaceId }) => surfaceId)).toEqual(['piece:s:front'])
    const side = 150
    let expected = 0
    for (let k = 0; k < side * side; k++) {
      const x = 0.9 * ((2 * (k % side) + 1) / side - 1)
      const z = 1.5 + 0.9 * ((2 * Math.floor(k / side) + 1) / side - 1)
      const away = Math.hypot(x - x0, 0.45, z - 1.5)
      expected += (0.35 * litAt(x, z) * (0.45 / away) ** 2 * (3.24 / side ** 2)) / (Math.PI * away ** 2)
    }
    expect(Math.abs(passed[0]!.receipt.flat / expected - 1)).toBeLessThan(0.02)
  })

  it('evenly lit, gives 64 % of its own face\'s exposure 0.75 m before a 1.8 m square (Howell B-3, four quarters)', () => {
    const far = emptyScene([{ ...head, place: at(0, 28, 1.5) }], [scrim])
    const onBack = lightAtPoint(far, 'x', receiverAt([0, 0.75, 1.5], [0, 1, 0], 'piece:s:back')).direct.flat
    const passed = lightAtPoint(far, 'x', receiverAt([0, 0, 1.5], [0, 1, 0])).viaSurfaces.find(({ by }) => by === 'passed')!
    expect(passed.receipt.flat / (0.35 * onBack)).toBeCloseTo(0.64, 2)
  })

  it('returns to its own side only what it does not let through', () => {
    const back = lightAtPoint(scene, 'x', receiverAt([0, 1.3, 1.5], [0, -1, 0]))
    const board = { ...scrim, kind: 'board', transmittance: 0 } as const
    const solid = lightAtPoint(emptyScene([head], [board]), 'x', receiverAt([0, 1.3, 1.5], [0, -1, 0]))
    expect(bounced(back, 'piece:s:back') / bounced(solid, 'piece:s:back')).toBeCloseTo(0.65, 9)
  })
})

describe('a lit front in the picture', () => {
  it('is as bright as its exitance: an even diffuser shows what leaves it', () => {
    const box = aLight('x', { place: at(0, 0.8, 1.5), aim: at(0, -2.1, 1.42), modifier: softbox })
    const scene = studioScene({ lights: [box] })
    const seen = frontLuminance(scene, behindAt(scene, 0.5, 0.5), 'x').exposureOfWhite
    expect(seen).toBeCloseTo(0.35 / (1.2 * 0.9), 9)
    expect(frontLuminance(scene, behindAt(scene, 0.5, 0.5), 'another').exposureOfWhite).toBe(0)
  })

  it('paper shines by what it reflects, not by itself', () => {
    expect(frontLuminance(studioScene(), behindAt(studioScene(), 0.5, 0.5), 'd').exposureOfWhite).toBe(0)
  })
})

describe('lights', () => {
  it('an unknown one gives nothing', () => {
    const found = lightAtPoint(studioScene(), 'nobody', receiverAt([0, 0, 1.5], [0, -1, 0]))
    expect(found.direct.flat + found.viaSurfaces.length + found.cavity.flat).toBe(0)
  })

  it('one\'s front hides another behind it', () => {
    const near = aLight('near', { place: at(0, -1, 1.5), aim: at(0, 0, 1.5), modifier: softbox })
    const small = { ...softbox, widthMetres: 0.3, heightMetres: 0.3 }
    const far = aLight('far', { place: at(0, -2.5, 1.5), aim: at(0, 0, 1.5), modifier: small })
    const nose = receiverAt([0, -0.12, 1.5], [0, -1, 0])
    expect(lightAtPoint(emptyScene([far, near]), 'far', nose).direct.flat).toBe(0)
    expect(lightAtPoint(emptyScene([far]), 'far', nose).direct.flat).toBeGreaterThan(0)
    expect(lightAtPoint(emptyScene([far, near]), 'near', nose).direct.flat).toBeGreaterThan(0)
  })

  it('every figure is finite and not negative, wherever lights stand', () => {
    const place = fc.record({
      xMetres: fc.double({ min: -4, max: 4, noNaN: true }), yMetres: fc.double({ min: -6, max: 4, noNaN: true }),
      zMetres: fc.double({ min: -0.5, max: 4, noNaN: true }),
    })
    const kind = fc.constantFrom('bare-tube', 'reflector', 'snoot', 'beauty-dish', 'softbox', 'octa', 'strip', 'umbrella-white',
      'umbrella-silver', 'umbrella-diffused', 'umbrella-shoot-through')
    fc.assert(fc.property(place, place, kind, fc.double({ min: 0.01, max: 3, noNaN: true }), (where, aim, modifierKind, size) => {
      const light = aLight('x', {
        place: where, aim, modifier: { kind: modifierKind, widthMetres: size, heightMetres: size, depthMetres: 0.3, diffusers: 1 },
        grid: { kind: 'honeycomb', openingDegrees: 30 },
      })
      const scene = studioScene({ lights: [...portraitLights, light] })
      for (const metered of meteredPlaces) {
        const found = lightAtPoint(scene, 'x', metered)
        for (const { flat, domeOut, domeToLight } of [found.direct, found.cavity, ...found.viaSurfaces.map(({ receipt }) => receipt)]) {
          for (const figure of [flat, domeOut, domeToLight]) {
            expect(Number.isFinite(figure)).toBe(true)
            expect(figure).toBeGreaterThanOrEqual(-1e-15)
          }
        }
      }
    }), { numRuns: 60 })
  })
})
