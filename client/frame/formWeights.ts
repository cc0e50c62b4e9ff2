import type { AreaPrediction, Framing } from '../../shared-core/predict/prediction.ts'
import { bustFrom } from './bust.ts'
import { bustShape, clothModelling, underJaw } from './bustShape.ts'
import { ease } from './smoothCurve.ts'

/**
 * The plain form as one linear map: every pixel is a weighted sum of the areas' colours. It depends on where the areas
 * fall in the Frame alone, so that a change of light or gel only sums again. Rows of `counts[p]` pairs, pixel by pixel.
 */
export interface FormWeights {
  readonly widthPixels: number
  readonly heightPixels: number
  readonly counts: Uint8Array
  readonly areaIndex: Uint8Array
  readonly weight: Float32Array
}

/** Weights thinner than this cannot be seen and are left out. */
const LEAST_WEIGHT = 0.006

export function formWeights(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number, widthPixels: number, heightPixels: number): FormWeights {
  const pixels = widthPixels * heightPixels
  const counts = new Uint8Array(pixels)
  let areaIndex = new Uint8Array(pixels * 6)
  let weight = new Float32Array(pixels * 6)
  let pairs = 0
  const paint = painter(areas, framing, statureMetres, framing.atSubjectWidthMetres / widthPixels)
  const sum = new Float64Array(areas.length)
  for (let p = 0; p < pixels; p++) {
    sum.fill(0)
    paint(((p % widthPixels) + 0.5) / widthPixels, (Math.floor(p / widthPixels) + 0.5) / heightPixels, sum)
    if (pairs + sum.length > weight.length) {
      areaIndex = grown(areaIndex, new Uint8Array(weight.length * 2))
      weight = grown(weight, new Float32Array(weight.length * 2))
    }
    const before = pairs
    for (let i = 0; i < sum.length; i++) {
      const value = sum[i]!
      if (value < LEAST_WEIGHT) continue
      areaIndex[pairs] = i
      weight[pairs++] = value
    }
    counts[p] = pairs - before
  }
  return { widthPixels, heightPixels, counts, areaIndex: areaIndex.slice(0, pairs), weight: weight.slice(0, pairs) }
}

function grown<Numbers extends Uint8Array | Float32Array>(from: Numbers, to: Numbers): Numbers {
  to.set(from)
  return to
}

type Paint = (frameX: number, frameY: number, sum: Float64Array) => void

function painter(areas: readonly AreaPrediction[], framing: Framing, statureMetres: number, pixelMetres: number): Paint {
  const background = backgroundPainter(areas)
  const bust = bustFrom(areas, framing, statureMetres)
  if (!bust) return (x, y, sum) => background(x, y, 1, sum)

  const shape = bustShape(bust)
  const field = (ids: readonly string[]) => patchField(areas, ids, bust.widthMetres, bust.heightMetres)
  const head = field(['nose', 'cheek-left', 'cheek-right', 'jaw-left', 'jaw-right', 'rear-jaw-left', 'rear-jaw-right'])
  const neck = field(bust.isOpen ? ['neck', 'breastbone'] : ['neck'])
  const cloth = field(bust.isOpen ? ['shoulder-left', 'shoulder-right'] : ['shoulder-left', 'shoulder-right', 'breastbone'])
  const hair = field(['hair'])
  const lips = field(['lips'])
  const outwards = (across: number) => Math.min(0.95, Math.max(-0.95, (across - bust.torsoAcross) / bust.shoulderHalfMetres))

  return (frameX, frameY, sum) => {
    const across = frameX * bust.widthMetres
    const down = frameY * bust.heightMetres
    if (shape.isFarOutside(across, down)) return background(frameX, frameY, 1, sum)
    const cover = shape.cover(across, down, pixelMetres)
    let left = 1
    const take = (share: number) => {
      const taken = left * share
      left -= taken
      return taken
    }
    const facing = cover.hair + cover.lips + cover.head > 0 ? shape.headFacing(across, down) : AHEAD
    const hairShare = take(cover.hair)
    if (hairShare > 0) hair(across, down, facing, hairShare * (0.86 + 0.2 * ease(-0.2, 0.8, facing[1])), sum)
    const lipsShare = take(cover.lips * 0.92)
    if (lipsShare > 0) lips(across, down, facing, lipsShare, sum)
    const headShare = take(cover.head)
    if (headShare > 0) head(across, down, facing, headShare * shape.modelling(across, down), sum)
    const bodyRight = outwards(across)
    const bodyFacing = [bodyRight, 0, Math.sqrt(1 - bodyRight * bodyRight)] as const
    const clothShare = take(cover.cloth)
    if (clothShare > 0) cloth(across, down, bodyFacing, clothShare * clothModelling(bust, across, down), sum)
    const neckShare = take(cover.neck)
    if (neckShare > 0) neck(across, down, bodyFacing, neckShare * underJaw(bust, down), sum)
    if (left > 0) background(frameX, frameY, left, sum)
  }
}

const AHEAD = [0, 0, 1] as const

type Patches = (across: number, down: number, facing: readonly [number, number, number], share: number, sum: Float64Array) => void

/** How near in metres a patch has to be to count as near. */
const PATCH_METRES = 0.04
/** How much a different facing pushes a patch away, beside distance. */
const FACING_PULL = 2.2

/**
 * Patches blended by nearness in place and in facing, so that a plane of the face takes the colour of the area that
 * faces as it does. Inverse-distance weights (Shepard 1968): at its own place an area shows its own colour.
 */
function patchField(areas: readonly AreaPrediction[], ids: readonly string[], widthMetres: number, heightMetres: number): Patches {
  const patches = areas.flatMap((area, index) =>
    ids.includes(area.id) && Number.isFinite(area.frameX) && Number.isFinite(area.frameY)
      ? [{ index, across: area.frameX * widthMetres, down: area.frameY * heightMetres, right: area.facing[0], up: area.facing[2], toCamera: -area.facing[1] }]
      : [],
  )
  const near = new Float64Array(patches.length)
  return (across, down, facing, share, sum) => {
    let total = 0
    for (let i = 0; i < patches.length; i++) {
      const patch = patches[i]!
      const dx = (across - patch.across) / PATCH_METRES
      const dy = (down - patch.down) / PATCH_METRES
      const apart = 1 - (facing[0] * patch.right + facing[1] * patch.up + facing[2] * patch.toCamera)
      const far = dx * dx + dy * dy + FACING_PULL * Math.max(0, apart) + 0.12
      near[i] = 1 / (far * far)
      total += near[i]!
    }
    for (let i = 0; i < patches.length; i++) sum[patches[i]!.index]! += (share * near[i]!) / total
  }
}

/** Corners blended bilinearly, and the centre's own colour rising smoothly to full weight in the middle. */
function backgroundPainter(areas: readonly AreaPrediction[]): (x: number, y: number, share: number, sum: Float64Array) => void {
  const index = (id: string) => areas.findIndex((area) => area.id === id)
  const centre = index('background-centre')
  const corners = ['top-left', 'top-right', 'bottom-left', 'bottom-right'].map((corner) => index(`background-${corner}`))
  const add = (sum: Float64Array, at: number, value: number) => {
    if (at >= 0) sum[at]! += value
  }
  return (x, y, share, sum) => {
    const [u, v] = [2 * x - 1, 2 * y - 1]
    const middle = centre < 0 ? 0 : (1 - u * u) * (1 - v * v)
    const rest = share * (1 - middle)
    add(sum, centre, share * middle)
    add(sum, corners[0] ?? -1, rest * (1 - x) * (1 - y))
    add(sum, corners[1] ?? -1, rest * x * (1 - y))
    add(sum, corners[2] ?? -1, rest * (1 - x) * y)
    add(sum, corners[3] ?? -1, rest * x * y)
  }
}
