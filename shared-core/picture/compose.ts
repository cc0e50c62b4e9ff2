import { CornerColours } from './cornerColours.ts'
import type { GroundNet } from './groundNet.ts'
import type { GroundLayer } from './groundLight.ts'
import type { Layer } from './layer.ts'
import { MATERIALS } from './material.ts'
import type { View } from './view.ts'

/** One light's colours for this exposure: camera channels, 1 is clip, for each unit of its layer. */
export interface LightTable {
  /** Three channels for each material: the subject's, then one for each ground. */
  readonly direct: Float64Array
  readonly returned: Float64Array
  /** What is mirrored, and what shines by itself, has the lamp's colour alone. */
  readonly sheen: Float64Array
  /** Returned light mirrored: the colour it came back with. */
  readonly returnedSheen: Float64Array
}

export interface LitLayer {
  readonly layer: Layer
  readonly table: LightTable
}

/** Row of a ground in the tables. */
export function rowOfGround(ground: number): number {
  return MATERIALS.length + ground
}

/** Room for the parts of a picture that are the same size every time: kept, so that a recoloured picture makes nothing new. */
export interface ComposeRoom {
  readonly corners: CornerColours
  /** Channels of each node of each ground's net. */
  readonly nets: readonly (Float32Array | null)[]
}

export function composeRoom({ samples, nets }: View): ComposeRoom {
  return {
    corners: new CornerColours(samples),
    nets: nets.map((net) => (net === null ? null : new Float32Array(3 * net.columns * net.rows))),
  }
}

/**
 * The picture before the lens and the clip: camera channels by pixel, three a pixel. The sum over lights of layer times
 * colour is taken at the corners of the surface and the nodes of the grounds, and drawn from there: both are linear, so
 * the order makes no difference. Samples of one pixel are averaged in linear light, as a sensor does.
 * @param ambient channels of each row under the room's steady light, already exposed
 * @param inPairs draws the background two pixels at a time, the second like the first: light on it is that smooth
 */
export function composeLinear(
  view: View, lights: readonly LitLayer[], ambient: Float64Array, room: ComposeRoom, into: Float32Array, inPairs = false,
): void {
  into.fill(0)
  view.nets.forEach((net, ground) => {
    if (net === null) return
    const colours = room.nets[ground]!
    colourNet(colours, lights.map(({ layer, table }) => [layer.grounds[ground]!, table] as const), ambient, 3 * rowOfGround(ground))
  })
  drawRuns(view, room, into, inPairs)
  drawPoints(view, room, into)
  room.corners.colour(lights, ambient)
  drawSurface(view, room.corners.channels, into)
  for (const lit of lights) drawEyes(view, lit, into)
}

function colourNet(
  colours: Float32Array, lights: readonly (readonly [GroundLayer, LightTable])[], ambient: Float64Array, row: number,
): void {
  for (let k = 0; k < 3; k++) {
    const still = ambient[row + k]!
    for (let at = k; at < colours.length; at += 3) colours[at] = still
  }
  const count = colours.length / 3
  for (const [{ direct, returned, shines }, table] of lights) {
    const [dr, dg, db] = [table.direct[row]!, table.direct[row + 1]!, table.direct[row + 2]!]
    const [rr, rg, rb] = [table.returned[row]!, table.returned[row + 1]!, table.returned[row + 2]!]
    const [sr, sg, sb] = [table.sheen[0]!, table.sheen[1]!, table.sheen[2]!]
    for (let node = 0, at = 0; node < count; node++, at += 3) {
      const d = direct[node]!
      const r = returned[node]!
      const s = shines[node]!
      colours[at] = colours[at]! + d * dr + r * rr + s * sr
      colours[at + 1] = colours[at + 1]! + d * dg + r * rg + s * sg
      colours[at + 2] = colours[at + 2]! + d * db + r * rb + s * sb
    }
  }
}

/** Rows of whole pixels on one ground, drawn between the nodes of its net. */
function drawRuns({ ground: { runs }, nets, width, height }: View, room: ComposeRoom, into: Float32Array, inPairs: boolean): void {
  for (let r = 0; r < runs.length; r += 4) {
    const net = nets[runs[r]!]!
    const colours = room.nets[runs[r]!]!
    const y = runs[r + 1]!
    const v = nodePlace(((y + 0.5) / height - net.top) / net.stepY, net.rows)
    const j = Math.min(net.rows - 2, v | 0)
    const below = v - j
    const above = 1 - below
    const line = 3 * j * net.columns
    const next = line + 3 * net.columns
    const perPixel = 1 / (width * net.stepX)
    const first = (0.5 / width - net.left) / net.stepX
    for (let x = runs[r + 2]!, end = runs[r + 3]!; x < end;) {
      // Along a row the colour goes in even steps from one node to the next.
      const place = nodePlace(first + x * perPixel, net.columns)
      const i = Math.min(net.columns - 2, place | 0)
      const last = Math.min(end, Math.max(x + 1, i === net.columns - 2 ? end : Math.ceil((i + 1 - first) / perPixel)))
      const n = line + 3 * i
      const m = next + 3 * i
      const right = place - i
      const leftRed = above * colours[n]! + below * colours[m]!
      const leftGreen = above * colours[n + 1]! + below * colours[m + 1]!
      const leftBlue = above * colours[n + 2]! + below * colours[m + 2]!
      const redAcross = above * colours[n + 3]! + below * colours[m + 3]! - leftRed
      const greenAcross = above * colours[n + 4]! + below * colours[m + 4]! - leftGreen
      const blueAcross = above * colours[n + 5]! + below * colours[m + 5]! - leftBlue
      for (let at = 3 * (y * width + x), along = right; x < last; x++, at += 3, along += perPixel) {
        const red = leftRed + along * redAcross
        const green = leftGreen + along * greenAcross
        const blue = leftBlue + along * blueAcross
        into[at] = red
        into[at + 1] = green
        into[at + 2] = blue
        if (!inPairs || x + 1 >= end) continue
        x++
        at += 3
        along += perPixel
        into[at] = red
        into[at + 1] = green
        into[at + 2] = blue
      }
    }
  }
}

function nodePlace(place: number, nodes: number): number {
  return place < 0 ? 0 : place > nodes - 1 ? nodes - 1 : place
}

/** Points of the ground around edges, a quarter of their pixel each. */
function drawPoints({ ground, nets }: View, room: ComposeRoom, into: Float32Array): void {
  for (let p = 0; p < ground.pointCount; p++) {
    const g = ground.pointGrounds[p]!
    const colours = room.nets[g]!
    const { n, m, right, below } = netPlace(nets[g]!, ground.pointX[p]!, ground.pointY[p]!)
    const at = 3 * ground.pointPixels[p]!
    for (let k = 0; k < 3; k++) {
      const upper = colours[3 * n + k]! + right * (colours[3 * n + 3 + k]! - colours[3 * n + k]!)
      const lower = colours[3 * m + k]! + right * (colours[3 * m + 3 + k]! - colours[3 * m + k]!)
      into[at + k] = into[at + k]! + 0.25 * (upper + below * (lower - upper))
    }
  }
}

/** Result of `netPlace`: the upper left and lower left nodes of the mesh that holds a place, and how far inside it lies. */
const found = { n: 0, m: 0, right: 0, below: 0 }

/** Where a place of the Frame lies on a net. Read at once: the next call writes over it. */
export function netPlace(net: GroundNet, frameX: number, frameY: number): Readonly<typeof found> {
  const u = nodePlace((frameX - net.left) / net.stepX, net.columns)
  const v = nodePlace((frameY - net.top) / net.stepY, net.rows)
  const i = Math.min(net.columns - 2, u | 0)
  const j = Math.min(net.rows - 2, v | 0)
  found.n = j * net.columns + i
  found.m = found.n + net.columns
  found.right = u - i
  found.below = v - j
  return found
}

function drawSurface({ samples }: View, colours: Float32Array, into: Float32Array): void {
  const { count, pixels, corners, weights } = samples
  for (let s = 0, t = 0; s < count; s++, t += 3) {
    const a = 3 * corners[t]!
    const b = 3 * corners[t + 1]!
    const c = 3 * corners[t + 2]!
    const wa = weights[t]!
    const wb = weights[t + 1]!
    const wc = weights[t + 2]!
    const at = 3 * pixels[s]!
    into[at] = into[at]! + wa * colours[a]! + wb * colours[b]! + wc * colours[c]!
    into[at + 1] = into[at + 1]! + wa * colours[a + 1]! + wb * colours[b + 1]! + wc * colours[c + 1]!
    into[at + 2] = into[at + 2]! + wa * colours[a + 2]! + wb * colours[b + 2]! + wc * colours[c + 2]!
  }
}

/** Catchlights: an eye sample is a quarter of its pixel. */
function drawEyes({ samples: { eyes } }: View, { layer, table: { sheen } }: LitLayer, into: Float32Array): void {
  for (let e = 0; e < eyes.count; e++) {
    const mirrored = 0.25 * layer.surface.eyes[e]!
    if (mirrored === 0) continue
    const at = 3 * eyes.pixels[e]!
    into[at] = into[at]! + mirrored * sheen[0]!
    into[at + 1] = into[at + 1]! + mirrored * sheen[1]!
    into[at + 2] = into[at + 2]! + mirrored * sheen[2]!
  }
}
