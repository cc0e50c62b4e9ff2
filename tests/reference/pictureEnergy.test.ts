import { describe, expect, it, vi } from 'vitest'
import { composeLinear, composeRoom, type LightTable } from '../../shared-core/picture/compose.ts'
import { lobe, meanMirrored, mirroredAt, mirroredByCosine } from '../../shared-core/picture/sheenLobe.ts'
import { sheenOf, type PictureMaterial } from '../../shared-core/picture/material.ts'
import { viewOf } from '../../shared-core/picture/view.ts'
import type { SceneLight } from '../../shared-core/set/scene.ts'
import { aLight, at, studioScene } from '../core/studioScene.ts'
import { ballSubject } from './ballSubject.ts'
import { layerFor, samplesOf } from './pictureOf.ts'

vi.setConfig({ testTimeout: 30_000 })

const skins: readonly (readonly [PictureMaterial, number])[] = [['skin', 0], ['skin', 0.5], ['skin', 1], ['lips', 0.3], ['cloth', 0.3]]

/** The share that the lobe mirrors from a cosine, by plain steps over the hemisphere of light. */
function plainAlbedo(alpha: number, nv: number): number {
  const rings = 1500
  const spokes = 600
  const v = [Math.sqrt(1 - nv * nv), 0, nv] as const
  let sum = 0
  for (let i = 0; i < rings; i++) {
    const nl = (i + 0.5) / rings
    for (let j = 0; j < spokes; j++) {
      const turn = (2 * Math.PI * (j + 0.5)) / spokes
      const l = [Math.sqrt(1 - nl * nl) * Math.cos(turn), Math.sqrt(1 - nl * nl) * Math.sin(turn), nl] as const
      const h = [l[0] + v[0], l[1] + v[1], l[2] + v[2]] as const
      const size = Math.hypot(...h)
      sum += lobe(alpha * alpha, nl, nv, h[2] / size, size / 2) * nl
    }
  }
  // lobe is pi times the BRDF; each step is 2 pi / (rings spokes) of solid angle.
  return (2 * sum) / (rings * spokes)
}

describe('the sheen of a rough surface', () => {
  it('gives the same both ways (Helmholtz)', () => {
    for (const [a, b, h, vh] of [[0.3, 0.8, 0.9, 0.7], [0.05, 0.95, 0.6, 0.5], [0.5, 0.51, 0.99, 0.4]] as const) {
      expect(lobe(0.09, a, b, h, vh)).toBeCloseTo(lobe(0.09, b, a, h, vh), 12)
    }
  })

  it('is tabulated as a plain sum over the hemisphere finds it', () => {
    for (const [material, skinSheen] of skins) {
      const sheen = sheenOf(material, skinSheen)
      const table = mirroredByCosine(sheen)
      for (const cosine of [0.25, 0.5, 0.75, 1]) {
        expect(Math.abs(mirroredAt(table, cosine) - sheen.strength * plainAlbedo(sheen.alpha, cosine)), `${material} at ${cosine}`).toBeLessThan(0.004)
      }
    }
  })

  it('with a perfect white below returns all light and never more, whatever the angle', () => {
    for (const [material, skinSheen] of skins) {
      const table = mirroredByCosine(sheenOf(material, skinSheen))
      const mean = meanMirrored(table)
      for (let i = 1; i <= 20; i++) {
        const mirrored = mirroredAt(table, i / 20)
        // What enters at this angle, and leaves again by any: (1 - a(l)) times the mean of (1 - a(v)) / (1 - mean).
        let leaves = 0
        for (let k = 0; k < 200; k++) leaves += (2 * ((k + 0.5) / 200) * (1 - mirroredAt(table, (k + 0.5) / 200))) / 200
        const all = mirrored + ((1 - mirrored) * leaves) / (1 - mean)
        expect(all).toBeLessThanOrEqual(1.001)
        expect(all).toBeGreaterThan(0.995)
        expect(mirrored).toBeGreaterThanOrEqual(0)
      }
    }
  })
})

/** Boxes beside one another that close a cube around the subject, all alike: light from everywhere, and nothing else. */
const CUBE_METRES = 1.6
const BOXES_ACROSS = 3

function furnaceLights(): SceneLight[] {
  const size = CUBE_METRES / BOXES_ACROSS
  const modifier = { kind: 'softbox', widthMetres: size, heightMetres: size, depthMetres: 0.1, diffusers: 2 } as const
  const faces = [0, 1, 2].flatMap((axis) => [-1, 1].map((side) => ({ axis, side })))
  return faces.flatMap(({ axis, side }) => Array.from({ length: BOXES_ACROSS * BOXES_ACROSS }, (_, i) => {
    const across = ((i % BOXES_ACROSS) + 0.5) * size - CUBE_METRES / 2
    const up = (Math.floor(i / BOXES_ACROSS) + 0.5) * size - CUBE_METRES / 2
    const onFace = (out: number): readonly [number, number, number] => {
      const place = [0, 0, 0]
      place[axis] = side * out
      place[(axis + 1) % 3] = across
      place[(axis + 2) % 3] = up
      return [place[0]!, place[1]!, place[2]! + 1.6]
    }
    return aLight(`${axis} ${side} ${i}`, { place: at(...onFace(CUBE_METRES / 2)), aim: at(...onFace(0)), modifier })
  }))
}

describe('a furnace: white in light that comes evenly from everywhere', () => {
  const CLOTH = 4
  const SKIN = 0
  // pi times the radiance of a uniform front is its exitance: the flux share of two diffusers over the box's area.
  const everywhere = (0.35 * BOXES_ACROSS * BOXES_ACROSS) / (CUBE_METRES * CUBE_METRES)
  for (const [name, material] of [['cloth', CLOTH], ['skin', SKIN]] as const) {
    it(`${name} receives it all, and shows it all`, () => {
      const scene = studioScene({ lights: furnaceLights(), pieces: [] })
      const samples = samplesOf(scene, ballSubject(0.1, 1.6, material, 16), 90, 120)
      const layers = scene.lights.map(({ id }) => layerFor(scene, samples, id, 0.5))
      const shown: number[] = []
      for (let slot = 0; slot < samples.surface.count; slot++) {
        const received = layers.reduce((sum, { direct }) => sum + direct[slot]!, 0)
        expect(Math.abs(received / everywhere - 1)).toBeLessThan(0.01)
        // Towards the edge of the ball the lobe grows narrower than the boxes' points lie apart.
        if (samples.surface.facing[slot]! < 0.3) continue
        shown.push(layers.reduce((sum, { directInside, sheen }) => sum + directInside[slot]! + sheen[slot]!, 0) / everywhere)
      }
      expect(shown.length).toBeGreaterThan(100)
      expect(shown.reduce((sum, value) => sum + value, 0) / shown.length).toBeCloseTo(1, 1.5)
      shown.forEach((value) => expect(Math.abs(value - 1)).toBeLessThan(0.05))
    })
  }

  it('what the room returns, on white, is all shown too', () => {
    const scene = studioScene({ lights: [aLight('a')], pieces: [] })
    // Lower than a head: there the field of materials knows no hair, whose strands differ in shade.
    const samples = samplesOf(scene, ballSubject(0.1, 1.2, CLOTH, 16), 45, 60)
    const { returned, returnedInside } = layerFor(scene, samples, 'a')
    const view = viewOf(scene, samples, 45, 60)
    const white = new Float64Array(3 * (8 + view.nets.length)).fill(1)
    const none = new Float64Array(white.length)
    const table: LightTable = { direct: none, returned: white, sheen: new Float64Array(3), returnedSheen: Float64Array.of(1, 1, 1) }
    const zeros = new Float32Array(samples.surface.count)
    const surface = {
      direct: zeros, directInside: zeros, sheen: zeros, eyes: new Float32Array(samples.eyes.count),
      returned: returned.map(() => 1), returnedInside: returnedInside.map((inside, i) => (returned[i]! > 0 ? inside / returned[i]! : 1)),
    }
    const grounds = view.nets.map((net) => {
      if (net === null) return null
      const nothing = new Float32Array(net.columns * net.rows)
      return { direct: nothing, returned: nothing.map(() => 1), shines: nothing }
    })
    const returnedColour = { curve: new Float64Array(81) as never, means: new Map<string, number>(), strayMean: 0 }
    const linear = new Float32Array(3 * 45 * 60)
    composeLinear(view, [{ layer: { surface, grounds, returnedColour }, table }], none, composeRoom(view), linear)
    linear.forEach((channel) => expect(Math.abs(channel - 1)).toBeLessThan(1e-5))
  })
})
