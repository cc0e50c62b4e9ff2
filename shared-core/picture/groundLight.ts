import { direction, dot, scale, subtract, type Vector } from '../arithmetic/vector.ts'
import { angularProfile, profileAt } from '../photometry/angularProfile.ts'
import type { BuiltSet, StandingLight } from '../set/builtSet.ts'
import type { Emitter } from '../set/emitter.ts'
import { addDirectLight, directSum } from '../transport/directLight.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'
import { SURFACE_CLEARANCE_METRES } from '../transport/patchView.ts'
import type { Receiver } from '../transport/receipt.ts'
import type { Ground } from './ground.ts'
import { netValues, receiverAt, type GroundNet } from './groundNet.ts'
import type { GroundSamples } from './groundSamples.ts'
import { returnedAmount, type ReturnedColour } from './returnedColour.ts'
import type { Fineness } from './shine.ts'

/** One light on one ground, by node of its net, for one lumen-second of the bare tube. */
export interface GroundLayer {
  /** Exposure that came straight or through a scrim. */
  readonly direct: Float32Array
  /** Exposure that came back from the room, its loss counted. */
  readonly returned: Float32Array
  /** What shines there by itself: the exposure of a perfect white that would look the same. */
  readonly shines: Float32Array
}

/** Nodes along each side of the net on which what the room returns is worked out: nothing is smoother. */
const RETURN_NODES = 4

export function groundLight(
  set: BuiltSet, light: StandingLight, samples: GroundSamples, net: GroundNet, colour: ReturnedColour, fineness: Fineness,
): GroundLayer {
  const ground = samples.finder.grounds[net.ground]!
  const count = net.columns * net.rows
  if (ground.emitter !== null) {
    const shines = ground.lightId === light.id
      ? netValues(net, false, (node) => towardsCamera(ground.emitter!, receiverAt(net, samples, node).place, set.view.place))
      : new Float32Array(count)
    return { direct: new Float32Array(count), returned: new Float32Array(count), shines }
  }
  const isFine = fineness === 'full'
  const direct = netValues(net, isFine, (node) => straight(set, light, receiverAt(net, samples, node), isFine))
  const { passed, returned } = fromSurfaces(set, light, samples, net, colour)
  for (let node = 0; node < count; node++) direct[node] = direct[node]! + passed[node]!
  return { direct, returned, shines: throughCloth(set, light, samples, net, ground, isFine) }
}

/** Of a front, for a net whose meshes are as wide as a coarse one's: no shadow is drawn sharper than they are. */
const FEW_CELLS = 16

/** Exposure straight from a light's fronts, subject and plates in the way. */
function straight(set: BuiltSet, light: StandingLight, { place, facing }: Receiver, isFine: boolean): number {
  const [nx, ny, nz] = facing
  directSum.flat = 0
  for (const emitter of light.emitters) {
    addDirectLight(emitter, light.index, set.occludersWithFronts,
      place[0] + nx * SURFACE_CLEARANCE_METRES, place[1] + ny * SURFACE_CLEARANCE_METRES, place[2] + nz * SURFACE_CLEARANCE_METRES,
      nx, ny, nz, nx, ny, nz, false, isFine ? undefined : FEW_CELLS)
  }
  return directSum.flat
}

/** Light that a scrim's cloth lets through towards this side. */
function throughCloth(set: BuiltSet, light: StandingLight, samples: GroundSamples, net: GroundNet, ground: Ground, isFine: boolean): Float32Array {
  const otherSideId = set.surfaces.find(({ id }) => id === ground.surfaceId)?.otherSideId ?? null
  if (ground.transmittance === 0 || otherSideId === null) return new Float32Array(net.columns * net.rows)
  return netValues(net, isFine, (node) => {
    const { place, facing } = receiverAt(net, samples, node)
    return ground.transmittance * straight(set, light, { place, facing: scale(facing, -1), surfaceId: otherSideId }, isFine)
  })
}

/** pi times the radiance of a front's place towards the camera. */
function towardsCamera(emitter: Emitter, place: Vector, camera: Vector): number {
  const cosAngle = dot(emitter.axis, direction(subtract(camera, place)))
  if (cosAngle <= 0) return 0
  const { lobeExponent, grid } = emitter.front
  return Math.PI * emitter.axialRadiancePerLumenSecond * profileAt(angularProfile(lobeExponent, grid), cosAngle)
}

function fromSurfaces(
  set: BuiltSet, light: StandingLight, samples: GroundSamples, net: GroundNet, colour: ReturnedColour,
): { passed: Float32Array, returned: Float32Array } {
  const passed = new Float32Array(RETURN_NODES * RETURN_NODES)
  const returned = new Float32Array(RETURN_NODES * RETURN_NODES)
  for (let k = 0; k < passed.length; k++) {
    const i = Math.round(((k % RETURN_NODES) * (net.columns - 1)) / (RETURN_NODES - 1))
    const j = Math.round((Math.floor(k / RETURN_NODES) * (net.rows - 1)) / (RETURN_NODES - 1))
    const found = lightAtPoint(set.scene, light.id, receiverAt(net, samples, j * net.columns + i))
    for (const leg of found.viaSurfaces) if (leg.by === 'passed') passed[k] = passed[k]! + leg.receipt.flat
    returned[k] = returnedAmount(found, colour, () => true)
  }
  return { passed: spread(passed, net), returned: spread(returned, net) }
}

/** Values of the few nodes drawn over the whole net. */
function spread(few: Float32Array, { columns, rows }: GroundNet): Float32Array {
  const out = new Float32Array(columns * rows)
  const last = RETURN_NODES - 1
  for (let j = 0; j < rows; j++) {
    const y = (j * last) / (rows - 1)
    const row = Math.min(last - 1, Math.floor(y))
    for (let i = 0; i < columns; i++) {
      const x = (i * last) / (columns - 1)
      const column = Math.min(last - 1, Math.floor(x))
      const at = row * RETURN_NODES + column
      const above = few[at]! + (x - column) * (few[at + 1]! - few[at]!)
      const below = few[at + RETURN_NODES]! + (x - column) * (few[at + RETURN_NODES + 1]! - few[at + RETURN_NODES]!)
      out[j * columns + i] = above + (y - row) * (below - above)
    }
  }
  return out
}
