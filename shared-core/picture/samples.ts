import { add, dot, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import { behindAt, type Behind } from '../set/behind.ts'
import { builtSet } from '../set/builtSet.ts'
import { sightThrough, type CameraView } from '../set/camera.ts'
import type { Scene } from '../set/scene.ts'
import { eyePartAt, materialAt } from '../subject/field/subjectField.ts'
import { drawIds } from './idBuffer.ts'
import { MATERIALS, type PictureMaterial } from './material.ts'
import type { PosedSubject } from './posedSubject.ts'

/**
 * What the camera sees, as a list: one sample a pixel, four where something ends inside it. Structure of arrays, so that
 * a layer is a run of numbers beside it.
 */
export interface Samples {
  readonly width: number
  readonly height: number
  readonly count: number
  readonly pixels: Uint32Array
  /** Share of its pixel that a sample stands for: 1 or a quarter. */
  readonly shares: Float32Array
  /** Three vertices of the subject and their weights; the first is -1 for the background. */
  readonly vertices: Int32Array
  readonly weights: Float32Array
  /** What the sample is of: `inner` covered by `outer` to the share `cover`. Indices into MATERIALS. */
  readonly inner: Uint8Array
  readonly outer: Uint8Array
  readonly cover: Float32Array
  /** For the background, which of `grounds` is met, and where in the Frame. */
  readonly ground: Int16Array
  readonly frameX: Float32Array
  readonly frameY: Float32Array
  readonly grounds: readonly Ground[]
}

/** A kind of background met in the Frame: one surface, or one lit front. */
export interface Ground {
  readonly key: string
  readonly behind: Behind
  /** The swatch of what is met; null for a bare lit front. */
  readonly swatch: string | null
}

const SUBDIVISION = 2
/** Two points of one pixel this far apart in depth belong to different things. */
const DEPTH_STEP_METRES = 0.012
/** Normals further apart than this within a pixel want more samples. */
const NORMAL_COSINE = 0.9

export function samplesOf(scene: Scene, subject: PosedSubject, width: number, height: number): Samples {
  const { view } = builtSet(scene)
  const fineWidth = width * SUBDIVISION
  const ids = drawIds(subject, view, fineWidth, height * SUBDIVISION)
  const list = new SampleList(scene, subject, view, width, height)
  const cells = [0, 0, 0, 0]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = y * SUBDIVISION * fineWidth + x * SUBDIVISION
      cells[0] = at
      cells[1] = at + 1
      cells[2] = at + fineWidth
      cells[3] = at + fineWidth + 1
      const pixel = y * width + x
      if (isSmooth(ids.facets, ids.depths, cells, subject)) {
        list.add(pixel, 1, ids.facets[at]!, (x + 0.5) / width, (y + 0.5) / height)
      } else {
        for (let k = 0; k < 4; k++) {
          const frameX = (x + 0.25 + 0.5 * (k & 1)) / width
          const frameY = (y + 0.25 + 0.5 * (k >> 1)) / height
          list.add(pixel, 0.25, ids.facets[cells[k]!]!, frameX, frameY)
        }
      }
    }
  }
  return list.finished()
}

function isSmooth(facets: Int32Array, depths: Float32Array, cells: readonly number[], subject: PosedSubject): boolean {
  const first = facets[cells[0]!]!
  for (let k = 1; k < 4; k++) {
    const other = facets[cells[k]!]!
    if (first < 0 !== other < 0) return false
    if (first < 0) continue
    if (Math.abs(depths[cells[0]!]! - depths[cells[k]!]!) > DEPTH_STEP_METRES) return false
    if (other === first) continue
    const a = subject.asset.triangles[3 * first]!
    const b = subject.asset.triangles[3 * other]!
    if (subject.asset.materials[a] !== subject.asset.materials[b]) return false
    if (subject.asset.materials[a] === EYE) return false
    const n = subject.normals
    if (n[3 * a]! * n[3 * b]! + n[3 * a + 1]! * n[3 * b + 1]! + n[3 * a + 2]! * n[3 * b + 2]! < NORMAL_COSINE) return false
  }
  return first < 0 || subject.asset.materials[subject.asset.triangles[3 * first]!] !== EYE
}

/** Index of the eyeballs among the asset's materials. */
const EYE = 5
const indexOf = (material: PictureMaterial): number => MATERIALS.indexOf(material)
const [SKIN, LIPS, BROW, HAIR, CLOTH] = [indexOf('skin'), indexOf('lips'), indexOf('brow'), indexOf('hair'), indexOf('cloth')]
const [EYE_WHITE, IRIS, PUPIL] = [indexOf('eye-white'), indexOf('iris'), indexOf('pupil')]
/** Smaller than this a share of cover is not seen. */
const LEAST_COVER = 0.02

class SampleList {
  private count = 0
  private readonly pixels: Uint32Array
  private readonly shares: Float32Array
  private readonly vertices: Int32Array
  private readonly weights: Float32Array
  private readonly inner: Uint8Array
  private readonly outer: Uint8Array
  private readonly cover: Float32Array
  private readonly ground: Int16Array
  private readonly frameX: Float32Array
  private readonly frameY: Float32Array
  private readonly grounds: Ground[] = []
  private readonly groundOf = new Map<string, number>()

  constructor(
    private readonly scene: Scene, private readonly subject: PosedSubject, private readonly view: CameraView,
    private readonly width: number, private readonly height: number,
  ) {
    const most = 4 * width * height
    this.pixels = new Uint32Array(most)
    this.shares = new Float32Array(most)
    this.vertices = new Int32Array(3 * most)
    this.weights = new Float32Array(3 * most)
    this.inner = new Uint8Array(most)
    this.outer = new Uint8Array(most)
    this.cover = new Float32Array(most)
    this.ground = new Int16Array(most)
    this.frameX = new Float32Array(most)
    this.frameY = new Float32Array(most)
  }

  add(pixel: number, share: number, facet: number, frameX: number, frameY: number): void {
    const s = this.count++
    this.pixels[s] = pixel
    this.shares[s] = share
    this.frameX[s] = frameX
    this.frameY[s] = frameY
    if (facet < 0) this.addGround(s, frameX, frameY)
    else this.addSurface(s, facet, frameX, frameY)
  }

  private addGround(s: number, frameX: number, frameY: number): void {
    const behind = behindAt(this.scene, frameX, frameY)
    const key = behind.lightId !== null ? `front:${behind.lightId}` : (behind.surfaceId ?? '')
    let index = this.groundOf.get(key)
    if (index === undefined) {
      index = this.grounds.length
      this.groundOf.set(key, index)
      const surface = builtSet(this.scene).surfaces.find(({ id }) => id === behind.surfaceId)
      this.grounds.push({ key, behind, swatch: surface?.swatch ?? null })
    }
    this.vertices[3 * s] = -1
    this.ground[s] = index
  }

  private addSurface(s: number, facet: number, frameX: number, frameY: number): void {
    const { triangles, positions: rest } = this.subject.asset
    const { positions } = this.subject
    const sight = sightThrough(this.view, frameX, frameY)
    const corners = [triangles[3 * facet]!, triangles[3 * facet + 1]!, triangles[3 * facet + 2]!] as const
    const weights = barycentric(this.view.place, sight, corners.map((v): Vector => [positions[3 * v]!, positions[3 * v + 1]!, positions[3 * v + 2]!]))
    let x = 0
    let y = 0
    let z = 0
    corners.forEach((v, k) => {
      this.vertices[3 * s + k] = v
      this.weights[3 * s + k] = weights[k]!
      x += weights[k]! * rest[3 * v]!
      y += weights[k]! * rest[3 * v + 1]!
      z += weights[k]! * rest[3 * v + 2]!
    })
    this.ground[s] = -1
    this.nameMaterial(s, this.subject.asset.materials[corners[0]]!, x, y, z)
  }

  /** From the field at the point, not from the vertices, or brows and lips would have the facets' outline. */
  private nameMaterial(s: number, meshMaterial: number, x: number, y: number, z: number): void {
    this.cover[s] = 0
    if (meshMaterial === EYE) {
      const part = eyePartAt(x, z)
      this.inner[s] = part === 'white' ? EYE_WHITE : part === 'iris' ? IRIS : PUPIL
      return
    }
    const { lips, brow, lash, hair, cloth } = materialAt(x, y, z)
    this.inner[s] = cloth > 0.5 ? CLOTH : SKIN
    const covers = [[HAIR, hair], [LIPS, lips], [BROW, Math.max(brow, lash)]] as const
    for (const [material, share] of covers) {
      if (share <= LEAST_COVER || share <= this.cover[s]!) continue
      this.outer[s] = material
      this.cover[s] = Math.min(1, share)
    }
  }

  finished(): Samples {
    const n = this.count
    return {
      width: this.width,
      height: this.height,
      count: n,
      pixels: this.pixels.slice(0, n),
      shares: this.shares.slice(0, n),
      vertices: this.vertices.slice(0, 3 * n),
      weights: this.weights.slice(0, 3 * n),
      inner: this.inner.slice(0, n),
      outer: this.outer.slice(0, n),
      cover: this.cover.slice(0, n),
      ground: this.ground.slice(0, n),
      frameX: this.frameX.slice(0, n),
      frameY: this.frameY.slice(0, n),
      grounds: this.grounds,
    }
  }
}

/** Weights of a facet's corners where a line of sight meets its plane, clamped to the facet. */
function barycentric(from: Vector, sight: Vector, [a, b, c]: readonly Vector[]): readonly [number, number, number] {
  const ab = subtract(b!, a!)
  const ac = subtract(c!, a!)
  const normal: Vector = [ab[1] * ac[2] - ab[2] * ac[1], ab[2] * ac[0] - ab[0] * ac[2], ab[0] * ac[1] - ab[1] * ac[0]]
  const slope = dot(normal, sight)
  const distance = Math.abs(slope) < 1e-20 ? 0 : dot(normal, subtract(a!, from)) / slope
  const at = subtract(add(from, scale(sight, distance)), a!)
  const [d00, d01, d11, d20, d21] = [dot(ab, ab), dot(ab, ac), dot(ac, ac), dot(at, ab), dot(at, ac)]
  const denominator = d00 * d11 - d01 * d01
  if (Math.abs(denominator) < 1e-30) return [1, 0, 0]
  const wb = Math.min(1, Math.max(0, (d11 * d20 - d01 * d21) / denominator))
  const wc = Math.min(1 - wb, Math.max(0, (d00 * d21 - d01 * d20) / denominator))
  return [1 - wb - wc, wb, wc]
}

