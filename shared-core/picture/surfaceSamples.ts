import type { CameraView } from '../set/camera.ts'
import { clothToneAt, eyeMaterialAt, lipToneAt, materialAt, strandAt } from '../subject/field/subjectField.ts'
import { noise } from '../subject/field/noise.ts'
import { eyeMirrors, type EyeMirrors, type EyeSamples } from './eyes.ts'
import { drawIds, type IdBuffer } from './idBuffer.ts'
import { MATERIALS, type PictureMaterial } from './material.ts'
import { BACKGROUND, BOTH_OR_EDGE, SUBDIVISION, pixelKinds } from './pixelKinds.ts'
import type { PosedSubject } from './posedSubject.ts'
import { MESH_EYE, seenSurface, type SeenSurface } from './seenSurface.ts'

/**
 * What of the subject the camera sees: one entry a pixel, four where something ends inside it, two where one material
 * covers another in part. An entry adds the colours of three corners to its pixel; a corner is a vertex as one material.
 */
export interface SurfaceSamples {
  readonly surface: SeenSurface
  readonly count: number
  /** Ascending. */
  readonly pixels: Uint32Array
  readonly corners: Uint32Array
  /** Of the three corners; they add up to the entry's share of its pixel. */
  readonly weights: Float32Array
  /** Which of its pixel's four places each entry was seen at, 0-3; 0 where one sample is the whole pixel. */
  readonly quarters: Uint8Array
  readonly cornerCount: number
  /** Slot of the surface and index into MATERIALS by corner. */
  readonly cornerSlots: Uint32Array
  readonly cornerMaterials: Uint8Array
  /** Samples on the eyes, which mirror for themselves. */
  readonly eyes: EyeSamples
  readonly mirrors: EyeMirrors
  readonly kinds: Uint8Array
  /** Points of edge pixels where the background shows: four times pixel, plus which of its four points. */
  readonly gaps: Uint32Array
}

const indexOf = (material: PictureMaterial): number => MATERIALS.indexOf(material)
const [SKIN, LIPS, BROW, HAIR, CLOTH] = [indexOf('skin'), indexOf('lips'), indexOf('brow'), indexOf('hair'), indexOf('cloth')]
const [EYE_WHITE, IRIS, PUPIL] = [indexOf('eye-white'), indexOf('iris'), indexOf('pupil')]
/** Less than this a share of cover is not seen, and more hides all below. */
const LEAST_COVER = 0.02
/** Brows are mostly a little darker than the hair of the head. */
const BROW_TONE = 0.75

export function surfaceSamples(subject: PosedSubject, view: CameraView, width: number, height: number): SurfaceSamples {
  const ids = drawIds(subject, view, width * SUBDIVISION, height * SUBDIVISION)
  const kinds = pixelKinds(ids, subject, width, height)
  let most = 0
  for (const kind of kinds) most += kind === BACKGROUND ? 0 : kind === BOTH_OR_EDGE ? 8 : 2
  const list = new EntryList(subject, ids, most, width, height)
  const row = width * SUBDIVISION
  for (let pixel = 0; pixel < kinds.length; pixel++) {
    const kind = kinds[pixel]!
    if (kind === BACKGROUND) continue
    const x = pixel % width
    const y = (pixel - x) / width
    const at = y * SUBDIVISION * row + x * SUBDIVISION
    if (kind === BOTH_OR_EDGE) {
      for (let k = 0; k < 4; k++) {
        const facet = ids.facets[at + (k & 1) + (k >> 1) * row]!
        if (facet < 0) list.addGap(pixel, k)
        else list.add(pixel, k, 0.25, facet, 2 * x + (k & 1), 2 * y + (k >> 1))
      }
    } else {
      list.add(pixel, 0, 1, ids.facets[at]!, 2 * x + 0.5, 2 * y + 0.5)
    }
  }
  return list.finished(view, kinds)
}

class EntryList {
  private count = 0
  private readonly pixels: Uint32Array
  private readonly corners: Uint32Array
  private readonly weights: Float32Array
  private readonly quarters: Uint8Array
  private quarter = 0
  private readonly used: Uint8Array
  private readonly gaps: number[] = []
  private readonly eyes: { pixel: number, quarter: number, vertex: number, frameX: number, frameY: number }[] = []

  constructor(
    private readonly subject: PosedSubject, private readonly ids: IdBuffer, most: number,
    private readonly width: number, private readonly height: number,
  ) {
    this.pixels = new Uint32Array(most)
    this.corners = new Uint32Array(3 * most)
    this.weights = new Float32Array(3 * most)
    this.quarters = new Uint8Array(most)
    this.used = new Uint8Array(subject.positions.length / 3)
  }

  addGap(pixel: number, point: number): void {
    this.gaps.push(4 * pixel + point)
  }

  /** Adds a facet seen at a place of the fine grid. */
  add(pixel: number, quarter: number, share: number, facet: number, gridX: number, gridY: number): void {
    const { triangles, positions: rest, materials } = this.subject.asset
    const { xs, ys, zs } = this.ids
    this.quarter = quarter
    const a = triangles[3 * facet]!
    const b = triangles[3 * facet + 1]!
    const c = triangles[3 * facet + 2]!
    const area = (xs[b]! - xs[a]!) * (ys[c]! - ys[a]!) - (xs[c]! - xs[a]!) * (ys[b]! - ys[a]!)
    // Weights on the screen, kept inside the facet; over depth they become those on the surface.
    const sa = inside(((xs[b]! - gridX) * (ys[c]! - gridY) - (xs[c]! - gridX) * (ys[b]! - gridY)) / area)
    const sb = inside(((xs[c]! - gridX) * (ys[a]! - gridY) - (xs[a]! - gridX) * (ys[c]! - gridY)) / area)
    const sc = inside(1 - sa - sb)
    const da = sa / zs[a]!
    const db = sb / zs[b]!
    const dc = sc / zs[c]!
    const whole = 1 / (da + db + dc)
    const wa = da * whole
    const wb = db * whole
    const wc = dc * whole
    const x = wa * rest[3 * a]! + wb * rest[3 * b]! + wc * rest[3 * c]!
    const y = wa * rest[3 * a + 1]! + wb * rest[3 * b + 1]! + wc * rest[3 * c + 1]!
    const z = wa * rest[3 * a + 2]! + wb * rest[3 * b + 2]! + wc * rest[3 * c + 2]!
    if (materials[a] === MESH_EYE) {
      const { iris, pupil, tone } = eyeMaterialAt(x, z)
      if (iris > 0) this.put(pixel, share * iris * tone, IRIS, a, b, c, wa, wb, wc)
      // The iris lies between: where it ends, either the pupil or the white is the rest.
      if (iris < 1) this.put(pixel, share * (1 - iris) * tone, pupil > 0 ? PUPIL : EYE_WHITE, a, b, c, wa, wb, wc)
      this.eyes.push({ pixel, quarter, vertex: wa >= wb && wa >= wc ? a : wb >= wc ? b : c,
        frameX: (gridX + 0.5) / (SUBDIVISION * this.width), frameY: (gridY + 0.5) / (SUBDIVISION * this.height) })
      return
    }
    // From the field at the point, not from the vertices, or brows and lips would have the facets' outline.
    const { lips, brow, lash, hair, cloth } = materialAt(x, y, z)
    let outer = HAIR
    let cover = hair
    if (lips > cover) [outer, cover] = [LIPS, lips]
    if (brow > cover) [outer, cover] = [BROW, brow]
    if (cloth > cover) [outer, cover] = [CLOTH, cloth]
    // Lashes are dark on anybody, as a pupil is.
    if (lash > cover) [outer, cover] = [PUPIL, lash]
    const tone = cover > LEAST_COVER ? toneOf(outer, x, y, z) : 1
    if (cover >= 1 - LEAST_COVER) cover = 1
    if (cover > LEAST_COVER) this.put(pixel, share * cover * tone, outer, a, b, c, wa, wb, wc)
    if (cover < 1) this.put(pixel, cover > LEAST_COVER ? share * (1 - cover) : share, SKIN, a, b, c, wa, wb, wc)
  }

  private put(pixel: number, share: number, material: number, a: number, b: number, c: number, wa: number, wb: number, wc: number): void {
    const s = this.count++
    this.pixels[s] = pixel
    this.quarters[s] = this.quarter
    this.corners[3 * s] = a * MATERIALS.length + material
    this.corners[3 * s + 1] = b * MATERIALS.length + material
    this.corners[3 * s + 2] = c * MATERIALS.length + material
    this.weights[3 * s] = share * wa
    this.weights[3 * s + 1] = share * wb
    this.weights[3 * s + 2] = share * wc
    this.used[a] = 1
    this.used[b] = 1
    this.used[c] = 1
  }

  finished(view: CameraView, kinds: Uint8Array): SurfaceSamples {
    const { count, eyes } = this
    const surface = seenSurface(this.subject, this.used, view.place)
    const numbered = numberCorners(this.corners.slice(0, 3 * count), surface, this.used.length)
    const eyeSamples: EyeSamples = {
      count: eyes.length,
      pixels: Uint32Array.from(eyes, ({ pixel }) => pixel),
      quarters: Uint8Array.from(eyes, ({ quarter }) => quarter),
      vertices: Uint32Array.from(eyes, ({ vertex }) => vertex),
      frameX: Float32Array.from(eyes, ({ frameX }) => frameX),
      frameY: Float32Array.from(eyes, ({ frameY }) => frameY),
    }
    return {
      surface, count, kinds, ...numbered,
      pixels: this.pixels.slice(0, count),
      weights: this.weights.slice(0, 3 * count),
      quarters: this.quarters.slice(0, count),
      gaps: Uint32Array.from(this.gaps),
      eyes: eyeSamples,
      mirrors: eyeMirrors(eyeSamples, this.subject, view, this.width, kinds.length / this.width),
    }
  }
}

const inside = (weight: number): number => (weight < 0 ? 0 : weight > 1 ? 1 : weight)

function toneOf(material: number, x: number, y: number, z: number): number {
  if (material === HAIR) return strandTone(x, y, z)
  if (material === CLOTH) return clothToneAt(x, y, z)
  return material === LIPS ? lipToneAt(x, z) : material === BROW ? BROW_TONE : 1
}

/** Strands differ in shade: hair of one even tone looks like a cap. */
function strandTone(x: number, y: number, z: number): number {
  const { across, along } = strandAt(x, y, z)
  return 1 + 0.22 * noise(across * 420 + 9, along * 14) + 0.2 * noise(across * 1100 + 70, along * 20)
}

/** Gives each vertex-as-material a number of its own, by vertex and then material, and writes it over the keys. */
function numberCorners(keys: Uint32Array, surface: SeenSurface, vertexCount: number): Pick<SurfaceSamples, 'corners' | 'cornerCount' | 'cornerSlots' | 'cornerMaterials'> {
  const width = MATERIALS.length
  const numbers = new Int32Array(vertexCount * width).fill(-1)
  for (const key of keys) numbers[key] = 0
  let cornerCount = 0
  for (let key = 0; key < numbers.length; key++) if (numbers[key] === 0) numbers[key] = cornerCount++
  const cornerSlots = new Uint32Array(cornerCount)
  const cornerMaterials = new Uint8Array(cornerCount)
  for (let slot = 0; slot < surface.count; slot++) {
    for (let material = 0; material < width; material++) {
      const number = numbers[surface.vertices[slot]! * width + material]!
      if (number < 0) continue
      cornerSlots[number] = slot
      cornerMaterials[number] = material
    }
  }
  for (let i = 0; i < keys.length; i++) keys[i] = numbers[keys[i]!]!
  return { corners: keys, cornerCount, cornerSlots, cornerMaterials }
}
