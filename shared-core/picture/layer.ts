import type { CellCount } from '../photometry/frontCells.ts'
import { builtSet } from '../set/builtSet.ts'
import { Occluders } from '../set/occluders.ts'
import type { Scene } from '../set/scene.ts'
import { WORDS } from '../subject/asset/selfShadow.ts'
import { meshMaterials } from '../subject/mesh/subjectMesh.ts'
import { addGroundLight, type GroundNet } from './grounds.ts'
import { sheenOf } from './material.ts'
import type { PosedSubject } from './posedSubject.ts'
import { cubeValue, returnedLight } from './returned.ts'
import { returnedAmount, returnedColour, type ReturnedColour } from './returnedColour.ts'
import type { Samples } from './samples.ts'
import { shinesOf } from './shine.ts'
import { addSurfaceLight, type SurfaceLight } from './surfaceLight.ts'

/** What one light does to every sample, from geometry alone, for one lumen-second of its bare tube. */
export interface Layer {
  /** Exposure that came straight or through a scrim. */
  readonly direct: Float32Array
  /** Exposure that came back from the room, in the colour `returnedColour` says. */
  readonly returned: Float32Array
  /** Mirrored light, or for the background what shines there by itself: an exposure of perfect white. */
  readonly sheen: Float32Array
  readonly returnedColour: ReturnedColour
}

/** What all layers of one view share. */
export interface View {
  readonly scene: Scene
  readonly subject: PosedSubject
  readonly samples: Samples
  readonly net: GroundNet
  /** Vertices that some sample rests on. */
  readonly vertices: Uint32Array
  /** Openness to the room by vertex, 0-1. */
  readonly openness: Float32Array
  readonly skinSheen: number
}

export function viewOf(scene: Scene, subject: PosedSubject, samples: Samples, net: GroundNet, skinSheen: number): View {
  const count = subject.positions.length / 3
  const used = new Uint8Array(count)
  for (const vertex of samples.vertices) if (vertex >= 0) used[vertex] = 1
  const vertices = Uint32Array.from({ length: used.reduce((sum, flag) => sum + flag, 0) })
  for (let v = 0, n = 0; v < count; v++) if (used[v]) vertices[n++] = v
  return { scene, subject, samples, net, vertices, openness: opennessOf(subject, vertices), skinSheen }
}

/** Half of all directions lie below the horizon and count as blocked; what is left of the other half is open. */
function opennessOf({ asset, positions }: PosedSubject, vertices: Uint32Array): Float32Array {
  const openness = new Float32Array(positions.length / 3)
  for (const vertex of vertices) {
    let blocked = 0
    for (let w = 0; w < WORDS; w++) blocked += bitCount(asset.selfShadow[vertex * WORDS + w]!)
    openness[vertex] = Math.min(1, (WORDS * 32 - blocked) / (WORDS * 16))
  }
  return openness
}

/** Number of bits set in a 32-bit word (Warren, Hacker's Delight, 5-1). */
function bitCount(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555)
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333)
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}

/** Eyeballs mirror by themselves; their vertices get diffuse light only. */
const EYE_MATERIAL = 'eye'

export function layerOf(view: View, lightId: string, cells: CellCount): Layer {
  const { scene, subject, samples, vertices, skinSheen } = view
  const set = builtSet(scene)
  const count = subject.positions.length / 3
  const surface: SurfaceLight = { direct: new Float32Array(count), sheen: new Float32Array(count) }
  const sheens = meshMaterials.map((material) =>
    material === EYE_MATERIAL ? { alpha: 0.08, strength: 1 } : sheenOf(material, skinSheen))
  const plates = platesOf(scene)
  for (const shine of shinesOf(scene, lightId, cells)) {
    addSurfaceLight(surface, shine, subject, vertices, sheens, plates, set.view.place)
  }
  const around = returnedLight(scene, lightId)
  const colour = returnedColour(scene, lightId, around)
  const cube = around.faces.map((face) => returnedAmount(face, colour, 'flat'))

  const direct = new Float32Array(samples.count)
  const returned = new Float32Array(samples.count)
  const sheen = new Float32Array(samples.count)
  const { normals } = subject
  for (let s = 0; s < samples.count; s++) {
    const a = samples.vertices[3 * s]!
    if (a < 0) continue
    const b = samples.vertices[3 * s + 1]!
    const c = samples.vertices[3 * s + 2]!
    const wa = samples.weights[3 * s]!
    const wb = samples.weights[3 * s + 1]!
    const wc = samples.weights[3 * s + 2]!
    direct[s] = wa * surface.direct[a]! + wb * surface.direct[b]! + wc * surface.direct[c]!
    sheen[s] = wa * surface.sheen[a]! + wb * surface.sheen[b]! + wc * surface.sheen[c]!
    const open = wa * view.openness[a]! + wb * view.openness[b]! + wc * view.openness[c]!
    returned[s] = open * cubeValue(cube, normals[3 * a]!, normals[3 * a + 1]!, normals[3 * a + 2]!)
  }
  addGroundLight(scene, lightId, view.net, samples, colour, direct, returned, sheen)
  return { direct, returned, sheen, returnedColour: colour }
}

const platesOfSet = new WeakMap<object, Occluders>()

/** Panels and the fronts of other lights: the subject's own shadow is in its directions. */
function platesOf(scene: Scene): Occluders {
  const set = builtSet(scene)
  let plates = platesOfSet.get(set)
  if (!plates) {
    const fronts = [...set.lights.values()].flatMap(({ index, emitters }) =>
      emitters.slice(0, 1).filter(({ front }) => front.shape !== 'sphere').map((emitter) => ({ owner: index, emitter })))
    platesOfSet.set(set, (plates = new Occluders([], set.panels, fronts)))
  }
  return plates
}
