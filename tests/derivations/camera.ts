/**
 * Derives CHANNEL_SHAPES of shared-core/colour/cameraResponse.ts. Run: npx tsx tests/derivations/camera.ts
 *
 * Four wishes at once: behind seven gels each channel lies midway, in stops, between two measured cameras; no clip
 * stop lies further than 0.38 from either (half a stop is allowed); the colours of formula-made surfaces survive the best
 * matrix (trainingSurfaces); and that matrix takes little from one channel for another, as makers keep it for noise.
 * It is a fit, so those seven gels do not check it; measured skins and papers, which it never sees, do
 * (tests/reference/camera.test.ts).
 */
import { channelResponse, type ChannelShape } from '../../shared-core/colour/cameraResponse.ts'
import { applyMatrix } from '../../shared-core/colour/matrix.ts'
import { fitWhitePreserving } from '../../shared-core/colour/matrixFit.ts'
import { trainingSurfaces } from '../../shared-core/colour/trainingSurfaces.ts'
import { illuminants } from '../../shared-core/spectra/illuminants.ts'
import { colourMatching } from '../../shared-core/spectra/observer.ts'
import { linearFromXyz, SRGB_WHITE_XYZ } from '../../shared-core/spectra/srgb.ts'
import { responseRow } from '../../shared-core/spectra/responseRow.ts'
import { checkGels, measuredRaw, type CheckGel } from './checkGels.ts'

type Triple = [number, number, number]
const gelNames = Object.keys(checkGels) as CheckGel[]

const dot = (a: Float64Array, b: Float64Array): number => a.reduce((sum, value, i) => sum + value * b[i]!, 0)
const rowsUnderD55 = (curves: readonly Float64Array[]): Float64Array[] =>
  curves.map((curve) => responseRow(illuminants.D55, curve))
const through = (rows: readonly Float64Array[], surface: Float64Array): Triple =>
  rows.map((row) => dot(row, surface)) as Triple

const eyeRows = rowsUnderD55([colourMatching.x, colourMatching.y, colourMatching.z])
const seen = trainingSurfaces.map((surface) => through(eyeRows, surface))

const labOf = (overWhite: Triple): Triple => {
  const [x, y, z] = overWhite.map((t) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116)) as Triple
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)]
}
const seenLab = seen.map(labOf)

const NAMES = ['peakNm', 'shortWidthNm', 'longWidthNm', 'skirt', 'skirtWidthNm', 'floor'] as const
const LEAST = [450, 18, 20, 0, 50, 0]
const MOST = [625, 60, 60, 0.3, 130, 0.02]
const REACH = [4, 3, 3, 0.03, 10, 0.003]
const DIGITS = [1, 1, 1, 3, 0, 4]

const shapesOf = (p: readonly number[]): ChannelShape[] =>
  [0, 1, 2].map(
    (channel) => Object.fromEntries(NAMES.map((name, k) => [name, p[6 * channel + k]!])) as unknown as ChannelShape,
  )

const stops = (share: number): number => -Math.log2(share)
const sorted = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b)

interface Verdict {
  readonly cost: number
  readonly worstClipStops: number
  readonly colourMiss: number
  /** Red, green and blue of linear sRGB from the channels, by rows. */
  readonly srgbFromChannels: readonly Triple[]
}

function judge(p: readonly number[]): Verdict {
  const rows = rowsUnderD55(shapesOf(p).map(channelResponse))
  let squares = 0
  let overLimit = 0
  let worstClipStops = 0
  for (const name of gelNames) {
    const losses = through(rows, checkGels[name]).map(stops)
    const cameras = measuredRaw[name].map((raw) => raw.map(stops))
    losses.forEach((loss, k) => (squares += (loss - (cameras[0]![k]! + cameras[1]![k]!) / 2) ** 2))
    sorted(losses).forEach((loss, k) => {
      for (const camera of cameras) {
        const miss = Math.abs(loss - sorted(camera)[k]!)
        worstClipStops = Math.max(worstClipStops, miss)
        overLimit += Math.max(0, miss - 0.38) ** 2
      }
    })
  }
  const channels = trainingSurfaces.map((surface) => through(rows, surface))
  const matrix = fitWhitePreserving(channels.map((c, k) => ({ channels: c, xyzOverWhite: seen[k]! })))
  const colourSquares = channels.reduce((sum, c, k) => {
    const lab = labOf(applyMatrix(matrix, c))
    return sum + lab.reduce((s, value, j) => s + (value - seenLab[k]![j]!) ** 2, 0)
  }, 0)
  const colourMiss = Math.sqrt(colourSquares / channels.length)
  const columns = ([[1, 0, 0], [0, 1, 0], [0, 0, 1]] as Triple[]).map((unit) =>
    linearFromXyz(applyMatrix(matrix, unit).map((v, k) => v * SRGB_WHITE_XYZ[k]!) as Triple),
  )
  const srgbFromChannels = [0, 1, 2].map((row) => columns.map((column) => column[row]!) as Triple)
  const borrowed = srgbFromChannels.reduce(
    (sum, row, k) => sum + row.reduce((s, value, j) => (j === k ? s : s + value * value), 0),
    0,
  )
  const outside = p.reduce((sum, value, i) => {
    const range = MOST[i % 6]! - LEAST[i % 6]!
    return sum + (Math.max(LEAST[i % 6]! - value, value - MOST[i % 6]!, 0) / range) ** 2
  }, 0)
  const cost = 0.6 * squares + 200 * overLimit + 0.1 * colourMiss * colourMiss + 0.7 * borrowed + 300 * outside
  return { cost, worstClipStops, colourMiss, srgbFromChannels }
}

/** Pattern search (Hooke and Jeeves 1961): one parameter at a time, bolder where it helps. */
function search(start: readonly number[]): number[] {
  const p = [...start]
  const step = p.map((_, i) => REACH[i % 6]!)
  let best = judge(p).cost
  for (let round = 0; round < 400; round++) {
    for (let i = 0; i < p.length; i++) {
      const before = p[i]!
      const helps = [1, -1].some((sign) => {
        p[i] = before + sign * step[i]!
        const cost = judge(p).cost
        if (cost >= best) return false
        best = cost
        return true
      })
      if (!helps) p[i] = before
      step[i] = step[i]! * (helps ? 1.3 : 0.7)
    }
    if (round % 5 === 0) step.forEach((s, i) => (step[i] = Math.max(s, 0.15 * REACH[i % 6]!)))
  }
  return p
}

const start = [600, 25, 30, 0.1, 80, 0.01, 535, 35, 35, 0.05, 80, 0.005, 455, 28, 32, 0.03, 90, 0.002]
const found = search(start).map((value, i) => Number(Math.max(value, LEAST[i % 6]!).toFixed(DIGITS[i % 6])))
const verdict = judge(found)
shapesOf(found).forEach((shape) => console.log(JSON.stringify(shape)))
const matrixRows = verdict.srgbFromChannels.map((row) => row.map((v) => v.toFixed(2)).join(' '))
console.log('worst miss of a clip stop:', verdict.worstClipStops.toFixed(3))
console.log('colour miss, Lab, root mean square:', verdict.colourMiss.toFixed(2))
console.log('linear sRGB from channels:', matrixRows.join(' | '))
