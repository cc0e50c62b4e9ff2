import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gridPass } from '../../shared-core/photometry/grid.ts'
import { domeWeight, flatWeight } from '../../shared-core/photometry/receptor.ts'
import { builtSet } from '../../shared-core/set/builtSet.ts'
import type { Scene, SceneLight } from '../../shared-core/set/scene.ts'
import { landingOf } from '../../shared-core/transport/landing.ts'
import { lightAtPoint } from '../../shared-core/transport/lightAtPoint.ts'
import type { Receiver } from '../../shared-core/transport/receipt.ts'
import { firstLandings, strayShare, surfaceAreaShares } from '../../shared-core/transport/roomReturn.ts'
import { bareTube, bounced, receiverAt, softbox } from './meteredLight.ts'
import { aLight, aPiece, at, emptyScene, face, meteredPlaces, studioScene } from './studioScene.ts'

/** Laws that hold whatever the figures: energy, linearity, symmetry, horizon, monotony. */

describe('receptors', () => {
  it('a dome reads a small source in front as a disc does, from the side half, from behind nothing', () => {
    expect([1, 0, -1].map(domeWeight)).toEqual([1, 0.5, 0])
    expect([1, 0.5, 0, -1].map(flatWeight)).toEqual([1, 0.5, 0, 0])
  })

  it('weigh a small far source by their own curves', () => {
    const small = { ...softbox, widthMetres: 0.1, heightMetres: 0.1 }
    const scene = emptyScene([aLight('x', { place: at(0, -10, 1.5), aim: at(0, 0, 1.5), modifier: small })])
    const straight = lightAtPoint(scene, 'x', receiverAt([0, 0, 1.5], [0, -1, 0])).direct
    for (const degrees of [30, 60, 120]) {
      const angle = (degrees * Math.PI) / 180
      const turned = lightAtPoint(scene, 'x', receiverAt([0, 0, 1.5], [Math.sin(angle), -Math.cos(angle), 0])).direct
      expect(turned.flat / straight.flat).toBeCloseTo(flatWeight(Math.cos(angle)), 3)
      expect(turned.domeOut / straight.domeOut).toBeCloseTo(domeWeight(Math.cos(angle)), 3)
      expect(turned.domeToLight / straight.domeToLight).toBeCloseTo(1, 3)
    }
  })

  it('a bare tube follows inverse square and cosine', () => {
    const scene = emptyScene([aLight('x', { place: at(0, -3, 1.5), aim: at(0, 0, 1.5), modifier: bareTube })])
    const { direct } = lightAtPoint(scene, 'x', receiverAt([0, 0, 1.5], [0, -0.6, 0.8]))
    expect(direct.flat).toBeCloseTo(0.6 / (4 * Math.PI * 9), 5)
    expect(direct.domeToLight).toBeCloseTo(1 / (4 * Math.PI * 9), 5)
  })
})

describe('horizon', () => {
  it('a flat receptor that faces away gets nothing straight from a front', () => {
    const scene = emptyScene([aLight('x', { place: at(0, -2, 1.5), aim: at(0, 0, 1.5), modifier: softbox })])
    expect(lightAtPoint(scene, 'x', receiverAt([0, 0, 1.5], [0, 1, 0])).direct.flat).toBe(0)
    expect(lightAtPoint(scene, 'x', receiverAt([0, 0, 1.5], [0, 1, 0])).direct.domeOut).toBeGreaterThan(0)
  })

  it('nothing comes out of the back of a front', () => {
    const scene = emptyScene([aLight('x', { place: at(0, -2, 1.5), aim: at(0, 0, 1.5), modifier: softbox })])
    expect(lightAtPoint(scene, 'x', receiverAt([0, -4, 1.5], [0, 1, 0])).direct).toEqual({ flat: 0, domeOut: 0, domeToLight: 0 })
  })

  it('a box right behind lights jaw and shoulders but not nose, lips and breastbone', () => {
    const wide = { ...softbox, widthMetres: 1.8, heightMetres: 1.8 }
    const scene = studioScene({ lights: [aLight('x', { place: at(0, 0.6, 1.5), aim: at(0, -2, 1.5), modifier: wide })] })
    const flat = Object.fromEntries(meteredPlaces.map((place) => [place.id, lightAtPoint(scene, 'x', place).direct.flat]))
    expect(flat['nose']).toBe(0)
    expect(flat['lips']).toBe(0)
    expect(flat['rear-jaw-left']!).toBeGreaterThan(flat['jaw-left']!)
    expect(flat['jaw-left']!).toBeGreaterThan(3 * flat['cheek-left']!)
    expect(flat['breastbone']!).toBe(0)
  })
})

describe('grids', () => {
  it('pass less the farther off the axis, and never more than everything', () => {
    fc.assert(fc.property(
      fc.constantFrom('honeycomb' as const, 'fabric' as const), fc.double({ min: 5, max: 120, noNaN: true }),
      fc.double({ min: 0, max: 89, noNaN: true }), fc.double({ min: 0, max: 89, noNaN: true }),
      (kind, openingDegrees, a, b) => {
        const [near, far] = a < b ? [a, b] : [b, a]
        const pass = (degrees: number) => gridPass({ kind, openingDegrees }, Math.cos((degrees * Math.PI) / 180))
        return pass(near) <= 1 && pass(far) <= pass(near) + 1e-12 && pass(far) >= 0
      }))
  })

  it('pass less of a light the tighter they are, everywhere on the subject', () => {
    const levels = [60, 40, 20].map((openingDegrees) => {
      const scene = studioScene({ lights: [aLight('x', { grid: { kind: 'honeycomb', openingDegrees } })] })
      return meteredPlaces.map((place) => lightAtPoint(scene, 'x', place).direct.domeOut)
    })
    levels[0]!.forEach((_, i) => {
      expect(levels[1]![i]!).toBeLessThanOrEqual(levels[0]![i]! + 1e-12)
      expect(levels[2]![i]!).toBeLessThanOrEqual(levels[1]![i]! + 1e-12)
    })
  })
})

describe('symmetry', () => {
  it('a set mirrored left to right gives the mirrored light', () => {
    const side = (x: 1 | -1): readonly SceneLight[] => [
      aLight('octa', { place: at(x * 0.8, -0.8, 2), aim: face, grid: { kind: 'fabric', openingDegrees: 50 } }),
      aLight('strip', {
        place: at(x * 1.05, 0.9, 1.7), aim: at(0, 0, 1.45),
        modifier: { ...softbox, kind: 'strip', widthMetres: 0.35, heightMetres: 1.4 },
      }),
      aLight('dish', {
        place: at(x * 0.5, -0.9, 1.9), aim: face,
        modifier: { ...softbox, kind: 'beauty-dish', widthMetres: 0.55, diffusers: 0 },
      }),
    ]
    const left = studioScene({ lights: side(-1) })
    const right = studioScene({ lights: side(1) })
    const mirrored = (id: string) => id.endsWith('-left') ? id.replace(/-left$/, '-right') : id.replace(/-right$/, '-left')
    for (const light of left.lights) {
      for (const place of meteredPlaces) {
        const twin = meteredPlaces.find(({ id }) => id === mirrored(place.id))!
        const a = lightAtPoint(left, light.id, place).direct
        const b = lightAtPoint(right, light.id, twin).direct
        expect(a.flat).toBeCloseTo(b.flat, 12)
        expect(a.domeOut).toBeCloseTo(b.domeOut, 12)
      }
    }
  })
})

describe('energy', () => {
  const closed = (light: SceneLight): Scene => {
    const scene = studioScene({ lights: [light] })
    return { ...scene, subject: { ...scene.subject, xMetres: 20 }, backdrop: { ...scene.backdrop, kind: 'none' } }
  }

  it('all that leaves a front lands in an empty room, no more and no less', () => {
    const share = (light: SceneLight) => firstLandings(closed(light), light.id).reduce((sum, { fluxShare }) => sum + fluxShare, 0)
    expect(share(aLight('x', { modifier: bareTube }))).toBeCloseTo(1, 9)
    expect(share(aLight('x', { modifier: softbox }))).toBeCloseTo(0.35, 9)
    expect(share(aLight('x', { modifier: { ...softbox, kind: 'umbrella-shoot-through' } }))).toBeCloseTo(0.36 + 0.34, 9)
    expect(share(aLight('x', { modifier: softbox, grid: { kind: 'fabric', openingDegrees: 40 } }))).toBeLessThan(0.35 * 0.8)
  })

  it('with people, paper and pieces about, never more lands than leaves', () => {
    const pieces = [
      aPiece('v', { kind: 'v-flat', place: at(-1, 0, 1.2), facingDegrees: 80 }),
      aPiece('s', {
        kind: 'scrim', place: at(0.6, -1, 1.6), facingDegrees: 200, widthMetres: 1.2, heightMetres: 1.2, transmittance: 0.3,
      }),
    ]
    const scene = studioScene({ pieces })
    const leaves: Record<string, number> = { a: 0.35, b: 0.33, c: 0.285 + 0.04, d: 0.77 }
    for (const { id } of scene.lights) {
      const landed = firstLandings(scene, id).reduce((sum, { fluxShare }) => sum + fluxShare, 0)
      expect(landed).toBeGreaterThan(0)
      expect(landed).toBeLessThanOrEqual(leaves[id]! + 1e-12)
    }
  })

  it('patches of walls hold just the flux that landed on them', () => {
    const set = builtSet(studioScene())
    for (const light of set.lights.values()) {
      const { patchExposure, surfaceShare } = landingOf(set.surroundings, light)
      const held = new Float64Array(set.surfaces.length)
      for (const { surfaceIndex, first, columns, rows, patchAreaSquareMetres } of set.patches.panels) {
        for (let i = first; i < first + columns * rows; i++) held[surfaceIndex]! += patchExposure[i]! * patchAreaSquareMetres
      }
      held.forEach((flux, i) => expect(flux).toBeCloseTo(surfaceShare[i]!, 12))
    }
  })

  it('a wall that returns everything gives the rest of the room no more than it got', () => {
    const light = aLight('x', { place: at(0, 0, 1.6), aim: at(-2.8, 0.5, 1.6), modifier: softbox })
    const scene = closed(light)
    const got = firstLandings(scene, 'x').find(({ surfaceId }) => surfaceId === 'leftWall')!.fluxShare
    const side = 12
    let given = 0
    for (const { id, panels } of builtSet(scene).surfaces) {
      if (id === 'leftWall') continue
      for (const { centre, across, up, normal, halfWidthMetres, halfHeightMetres } of panels) {
        const cell = (4 * halfWidthMetres * halfHeightMetres) / (side * side)
        for (let k = 0; k < side * side; k++) {
          const u = halfWidthMetres * ((2 * (k % side) + 1) / side - 1)
          const v = halfHeightMetres * ((2 * Math.floor(k / side) + 1) / side - 1)
          const place = [0, 1, 2].map((i) => centre[i]! + u * across[i]! + v * up[i]!) as unknown as Receiver['place']
          given += cell * bounced(lightAtPoint(scene, 'x', receiverAt(place, normal, id)), 'leftWall')
        }
      }
    }
    expect(given).toBeLessThan(got * 1.02)
    // A closed room: all of it arrives somewhere. Patches are coarse in the corners.
    expect(given).toBeGreaterThan(got * 0.9)
  })

  it('a receiver in an empty room sees walls all round: the furnace', () => {
    const light = aLight('x', { modifier: bareTube })
    const scene = closed(light)
    const area = builtSet(scene).surfaceAreaSquareMetres
    for (const facing of [[0, -1, 0], [0.6, 0, 0.8]] as const) {
      const { cavity } = lightAtPoint(scene, 'x', receiverAt([0.3, 0.2, 1.5], facing))
      // In a uniform field a flat disc reads the exposure, a dome twice it.
      expect(cavity.flat * area).toBeCloseTo(1, 6)
      expect(cavity.domeOut * area).toBeCloseTo(2, 1)
    }
  })

  it('the cavity series ends where the reflectance says: r / (1 - r) of what was returned (integrating sphere)', () => {
    expect(strayShare(1, 0.5)).toBeCloseTo(0.5 + 0.25 + 0.125 + 0.0625 + 0.0625, 12)
    expect(strayShare(0.8, 0)).toBe(0)
    expect(surfaceAreaShares(studioScene()).reduce((sum, { areaShare }) => sum + areaShare, 0)).toBeCloseTo(1, 12)
  })
})
