import { behindAt, type Behind } from '../set/behind.ts'
import type { Scene } from '../set/scene.ts'
import { frontLuminance } from '../transport/frontLuminance.ts'
import { lightAtPoint } from '../transport/lightAtPoint.ts'
import type { Receiver } from '../transport/receipt.ts'
import type { Samples } from './samples.ts'
import { returnedAmount, type ReturnedColour } from './returnedColour.ts'

/** Light on paper, walls and lit fronts is smooth: it is worked out on a coarse net over the Frame and drawn between. */
const ACROSS = 15
const DOWN = 20

interface Node {
  readonly ground: number
  readonly receiver: Receiver
  readonly behind: Behind
}

export interface GroundNet {
  readonly nodes: readonly Node[]
  /** For each ground, where it was first met: stands in where no node lies on it. */
  readonly spares: readonly Node[]
}

export function groundNet(scene: Scene, samples: Samples): GroundNet {
  const nodes: Node[] = []
  for (let j = 0; j < DOWN; j++) {
    for (let i = 0; i < ACROSS; i++) {
      const behind = behindAt(scene, i / (ACROSS - 1), j / (DOWN - 1))
      const key = behind.lightId !== null ? `front:${behind.lightId}` : (behind.surfaceId ?? '')
      nodes.push(nodeOf(samples.grounds.findIndex((ground) => ground.key === key), behind))
    }
  }
  return { nodes, spares: samples.grounds.map(({ behind }, index) => nodeOf(index, behind)) }
}

function nodeOf(ground: number, behind: Behind): Node {
  return { ground, behind, receiver: { place: behind.place, facing: behind.facing, surfaceId: behind.surfaceId } }
}

/** Lays one light on the background's samples. */
export function addGroundLight(
  scene: Scene, lightId: string, net: GroundNet, samples: Samples, returned: ReturnedColour,
  direct: Float32Array, returnedInto: Float32Array, shines: Float32Array,
): void {
  const value = (node: Node): readonly [number, number, number] => {
    if (node.ground < 0) return [0, 0, 0]
    const found = lightAtPoint(scene, lightId, node.receiver)
    let straight = found.direct.flat
    for (const leg of found.viaSurfaces) if (leg.by === 'passed') straight += leg.receipt.flat
    return [straight, returnedAmount(found, returned, 'flat'), frontLuminance(scene, node.behind, lightId).exposureOfWhite]
  }
  const values = net.nodes.map(value)
  const spares = net.spares.map(value)
  for (let s = 0; s < samples.count; s++) {
    const ground = samples.ground[s]!
    if (ground < 0) continue
    const x = samples.frameX[s]! * (ACROSS - 1)
    const y = samples.frameY[s]! * (DOWN - 1)
    const i = Math.min(ACROSS - 2, Math.floor(x))
    const j = Math.min(DOWN - 2, Math.floor(y))
    let weight = 0
    let a = 0
    let b = 0
    let c = 0
    for (let k = 0; k < 4; k++) {
      const at = (j + (k >> 1)) * ACROSS + i + (k & 1)
      if (net.nodes[at]!.ground !== ground) continue
      const w = ((k & 1) ? x - i : 1 - x + i) * ((k >> 1) ? y - j : 1 - y + j) + 1e-9
      const node = values[at]!
      weight += w
      a += w * node[0]
      b += w * node[1]
      c += w * node[2]
    }
    if (weight <= 0) {
      ;[a, b, c] = spares[ground]!
      weight = 1
    }
    direct[s] = a / weight
    returnedInto[s] = b / weight
    shines[s] = c / weight
  }
}
