import { describe, expect, it } from 'vitest'
import { incidentFNumber } from '../../shared-core/exposure/meter.ts'
import { type Grid, gridPass } from '../../shared-core/photometry/grid.ts'
import { axialRadiancePerExitance, lobeExponentOfBeam } from '../../shared-core/photometry/lobe.ts'
import { luminousEnergyLumenSeconds } from '../../shared-core/photometry/luminousEnergy.ts'
import type { ModifierKind } from '../../shared-core/photometry/modifier.ts'
import { lightAtPoint } from '../../shared-core/transport/lightAtPoint.ts'
import { aLight, at, emptyScene, noGrid } from '../core/studioScene.ts'

const DOME = 330
const FLAT = 250

interface Shaper {
  readonly kind: ModifierKind
  readonly width: number
  readonly height?: number
  readonly diffusers?: number
  readonly grid?: Grid
}

/** Exposure straight in front of a light, for each lumen-second of its tube. */
function onAxis({ kind, width, height = width, diffusers = 0, grid = noGrid }: Shaper, distanceMetres: number): number {
  const scene = emptyScene([aLight('x', {
    place: at(0, -distanceMetres, 1.5), aim: at(0, 0, 1.5), grid,
    modifier: { kind, widthMetres: width, heightMetres: height, depthMetres: 0.3, diffusers },
  })])
  return lightAtPoint(scene, 'x', { place: [0, 0, 1.5], facing: [0, -1, 0], surfaceId: null }).direct.domeOut
}

const standardReflector: Shaper = { kind: 'reflector', width: 0.18 }
const lossStops = (shaper: Shaper) => Math.log2(onAxis(standardReflector, 2) / onAxis(shaper, 2))

describe('cosine-power lobe: I0 = (n + 1) / (2 pi), half its peak at acos(0.5^(1/n))', () => {
  it.each([[1, 0.31831], [2, 0.477465], [5, 0.95493], [10, 1.750704], [20, 3.342254], [40, 6.525353]])('n = %d', (n, intensity) => {
    // A front's far intensity has one cosine more than its radiance.
    expect(axialRadiancePerExitance(n - 1)).toBeCloseTo(intensity, 6)
  })

  it.each([[30, 19.994], [45, 8.755], [60, 4.819], [90, 2], [120, 1]])('a beam of %d degrees is n = %d', (beam, n) =>
    expect(lobeExponentOfBeam(beam)).toBeCloseTo(n, 2))

  it('shines as it says: the reflector is at half its axial intensity 30 degrees off its axis', () => {
    const reflector = { kind: 'reflector', widthMetres: 0.18, heightMetres: 0.18, depthMetres: 0.2, diffusers: 0 } as const
    const scene = emptyScene([aLight('x', { place: at(0, 0, 1.5), aim: at(0, 1, 1.5), modifier: reflector })])
    const far = (degrees: number) => {
      const x = 8 * Math.sin((degrees * Math.PI) / 180)
      const y = 8 * Math.cos((degrees * Math.PI) / 180)
      return lightAtPoint(scene, 'x', { place: [x, y, 1.5], facing: [-x / 8, -y / 8, 0], surfaceId: null }).direct.flat
    }
    expect(far(30) / far(0)).toBeCloseTo(0.5, 2)
  })
})

describe('softbox worked by hand: 500 Ws, 30 lm s/Ws, 35 % out of a perfect diffuser 0.9 x 1.2 m', () => {
  const box: Shaper = { kind: 'softbox', width: 0.9, height: 1.2, diffusers: 2 }
  const energy = luminousEnergyLumenSeconds(500, 30)

  it('gives 637.58 lx s at 1.5 m: f/15.97 on a flat disc of C 250', () => {
    const exposure = energy * onAxisFlat(box, 1.5)
    expect(exposure).toBeCloseTo(637.58, 1)
    expect(incidentFNumber(exposure, 100, FLAT)).toBeCloseTo(15.97, 2)
    expect(incidentFNumber(exposure, 100, 340)).toBeCloseTo(13.69, 2)
  })

  it.each([[0.5, 0.565827, 2.109], [0.75, 0.371186, 1.5008], [1, 0.251416, 0.9387], [2, 0.07862, -0.7384], [3, 0.036674, -1.8385]])(
    'at %d m', (distance, factor, stops) => {
      expect((onAxisFlat(box, distance) * 1.08) / 0.35).toBeCloseTo(factor, 6)
      expect(Math.log2(onAxisFlat(box, distance) / onAxisFlat(box, 1.5))).toBeCloseTo(stops, 4)
    })

  function onAxisFlat({ kind, width, height = width, diffusers = 0 }: Shaper, distance: number): number {
    const scene = emptyScene([aLight('x', {
      place: at(0, -distance, 1.5), aim: at(0, 0, 1.5),
      modifier: { kind, widthMetres: width, heightMetres: height, depthMetres: 0.3, diffusers },
    })])
    // A receiver stands a millimetre out from its place.
    return lightAtPoint(scene, 'x', { place: [0, 0.001, 1.5], facing: [0, -1, 0], surfaceId: null }).direct.flat
  }
})

describe('what 1000 Ws read at 2 m, ISO 100, dome (common practice, no source: as users publish, within 0.7 stop)', () => {
  const stopsFrom = (shaper: Shaper, fNumber: number) =>
    2 * Math.log2(incidentFNumber(1000 * 38 * onAxis(shaper, 2), 100, DOME) / fNumber)

  it.each([
    ['bare tube f/16', { kind: 'bare-tube', width: 0.1 }, 16, 0, 0.3],
    ['55-65 degree reflector f/45', standardReflector, 45.2548, 0, 0.3],
    ['90 x 120 softbox, two diffusers, f/16 and 2 tenths', { kind: 'softbox', width: 0.9, height: 1.2, diffusers: 2 }, 16, 0.2, 0.1],
    ['165 cm umbrella with front diffusion f/11 and 8 tenths', { kind: 'umbrella-diffused', width: 1.65 }, 11.3137, 0.8, 0.1],
  ] as const)('%s', (_, shaper, fNumber, tenths, tolerance) => {
    expect(Math.abs(stopsFrom(shaper, fNumber) - tenths)).toBeLessThan(tolerance)
  })
})

describe('losses against the standard reflector at 2 m, on axis (common practice, no source)', () => {
  it.each([
    ['snoot', { kind: 'snoot', width: 0.07 }, 1, 2],
    ['beauty dish 42', { kind: 'beauty-dish', width: 0.42 }, 1, 1.5],
    ['beauty dish 70', { kind: 'beauty-dish', width: 0.7 }, 1, 1.5],
    ['beauty dish with sock', { kind: 'beauty-dish', width: 0.55, diffusers: 1 }, 1.8, 2.2],
    ['softbox 60, one diffuser', { kind: 'softbox', width: 0.6, diffusers: 1 }, 2, 2.5],
    ['softbox 90 x 120, one diffuser', { kind: 'softbox', width: 0.9, height: 1.2, diffusers: 1 }, 2, 2.5],
    ['softbox 60, two diffusers', { kind: 'softbox', width: 0.6, diffusers: 2 }, 2.5, 3.3],
    ['octa 180, two diffusers', { kind: 'octa', width: 1.8, diffusers: 2 }, 2.5, 3.3],
    ['strip 35 x 140, one diffuser', { kind: 'strip', width: 0.35, height: 1.4, diffusers: 1 }, 2, 2.5],
    ['strip 35 x 140, two diffusers', { kind: 'strip', width: 0.35, height: 1.4, diffusers: 2 }, 2.5, 3.3],
    ['white umbrella 105', { kind: 'umbrella-white', width: 1.05 }, 2, 2.7],
    ['white umbrella 180', { kind: 'umbrella-white', width: 1.8 }, 2, 2.7],
    ['shoot-through umbrella 85', { kind: 'umbrella-shoot-through', width: 0.85 }, 2.3, 3],
    ['shoot-through umbrella 150', { kind: 'umbrella-shoot-through', width: 1.5 }, 2.3, 3],
    ['silver umbrella 105', { kind: 'umbrella-silver', width: 1.05 }, 1.5, 2],
    ['silver umbrella 180', { kind: 'umbrella-silver', width: 1.8 }, 1.5, 2],
  ] as const)('%s loses %d to %d stops', (_, shaper, least, most) => {
    expect(lossStops(shaper)).toBeGreaterThan(least)
    expect(lossStops(shaper)).toBeLessThan(most)
  })

  it('front diffusion on an umbrella costs another 0.8-1.3', () => {
    const added = lossStops({ kind: 'umbrella-diffused', width: 1.65 }) - lossStops({ kind: 'umbrella-white', width: 1.65 })
    expect(added).toBeGreaterThan(0.8)
    expect(added).toBeLessThan(1.3)
  })

  it('a fabric grid of 30-50 degrees costs another 0.5-1', () => {
    for (const openingDegrees of [30, 40, 50]) {
      const box: Shaper = { kind: 'softbox', width: 0.9, height: 1.2, diffusers: 2 }
      const added = lossStops({ ...box, grid: { kind: 'fabric', openingDegrees } }) - lossStops(box)
      expect(added).toBeGreaterThan(0.5)
      expect(added).toBeLessThan(1)
    }
  })

  it('a honeycomb costs 0.3-1.5, the tighter the more', () => {
    const losses = [40, 30, 20, 10].map((openingDegrees) =>
      lossStops({ ...standardReflector, grid: { kind: 'honeycomb', openingDegrees } }))
    expect(losses).toEqual([...losses].sort((a, b) => a - b))
    expect(losses[0]).toBeGreaterThan(0.3)
    expect(losses[3]).toBeLessThan(1.5)
  })

  it('a shoot-through umbrella sends about half of its light backwards', () => {
    const scene = emptyScene([aLight('x', {
      place: at(0, 0, 1.5), aim: at(0, 5, 1.5),
      modifier: { kind: 'umbrella-shoot-through', widthMetres: 1, heightMetres: 1, depthMetres: 0.4, diffusers: 0 },
    })])
    const ahead = lightAtPoint(scene, 'x', { place: [0, 3, 1.5], facing: [0, -1, 0], surfaceId: null }).direct.flat
    const behind = lightAtPoint(scene, 'x', { place: [0, -3, 1.5], facing: [0, 1, 0], surfaceId: null }).direct.flat
    expect(behind / (ahead + behind)).toBeGreaterThan(0.4)
    expect(behind / (ahead + behind)).toBeLessThan(0.55)
  })
})

describe('metered heads as anchors, within the two thirds of a stop by which makes differ', () => {
  const intensityAt = (joules: number) => 38 * joules * onAxis(standardReflector, 4) * 16

  // arufu.net 2014: a 400 Ws head in a 55 degree reflector, ISO 100, as metered.
  it.each([[400, 4, 16], [400, 3, 22.6274], [100, 4, 8], [100, 3, 11.3137], [50, 4, 5.65685]])(
    '%d Ws at %d m reads f/%d', (joules, distance, fNumber) => {
      const predicted = incidentFNumber(38 * joules * onAxis(standardReflector, distance), 100, DOME)
      expect(Math.abs(2 * Math.log2(predicted / fNumber))).toBeLessThan(2 / 3)
    })

  // Digital Photo Pro, "Strobes On The Go": about 600 Ws for a guide number of about 80 m; GN^2 = I S / C (ISO 1230:1992).
  it('600 Ws make a guide number of about 80 m', () => {
    expect(Math.abs(2 * Math.log2(Math.sqrt((intensityAt(600) * 100) / FLAT) / 80))).toBeLessThan(2 / 3)
  })
})

describe('grids from the shape of their cells', () => {
  /** Share of a cell's exit that is in sight of its entrance, shifted by the slant, counted on a fine raster. */
  function counted(isInCell: (x: number, y: number) => boolean, shiftX: number, shiftY: number): number {
    const side = 160
    let open = 0
    let whole = 0
    for (let i = 0; i < side; i++) {
      for (let j = 0; j < side; j++) {
        const x = (2 * i + 1) / side - 1
        const y = (2 * j + 1) / side - 1
        if (!isInCell(x, y)) continue
        whole++
        if (isInCell(x - shiftX, y - shiftY)) open++
      }
    }
    return open / whole
  }
  const isInRoundCell = (x: number, y: number) => x * x + y * y <= 1
  const isInSquareCell = (x: number, y: number) => Math.abs(x) <= 1 && Math.abs(y) <= 1

  it.each([5, 10, 15, 18])('a 40 degree honeycomb %d degrees off its axis: overlap of two circles', (degrees) => {
    const angle = (degrees * Math.PI) / 180
    const shift = (2 * Math.tan(angle)) / Math.tan(Math.PI / 9)
    const grid = { kind: 'honeycomb', openingDegrees: 40 } as const
    // Less what the walls scatter (0.5 %).
    expect(gridPass(grid, Math.cos(angle)) / gridPass(grid, 1)).toBeCloseTo(0.995 * counted(isInRoundCell, shift, 0) + 0.005, 2)
  })

  it.each([10, 25, 40, 50])('a 50 degree fabric grid %d degrees off its axis: squares, averaged all round', (degrees) => {
    const angle = (degrees * Math.PI) / 180
    const grid = { kind: 'fabric', openingDegrees: 50 } as const
    // Its name is the full width at half pass: find the depth of the cells from that alone.
    const averaged = (shift: number) => {
      const turns = 24
      let sum = 0
      for (let k = 0; k < turns; k++) {
        const turn = ((k + 0.5) / turns) * (Math.PI / 2)
        sum += counted(isInSquareCell, shift * Math.cos(turn), shift * Math.sin(turn)) / turns
      }
      return sum
    }
    let low = 0
    let high = 2
    for (let k = 0; k < 12; k++) {
      const middle = (low + high) / 2
      if (averaged(middle) > 0.5) low = middle
      else high = middle
    }
    const shift = (low * Math.tan(angle)) / Math.tan((25 * Math.PI) / 180)
    expect(gridPass(grid, Math.cos(angle)) / gridPass(grid, 1)).toBeCloseTo(0.98 * averaged(shift) + 0.02, 2)
  })

  it('a fabric grid of 50 degrees closes about 55 degrees off its axis and leaks 2 % (common practice, no source)', () => {
    const grid = { kind: 'fabric', openingDegrees: 50 } as const
    const relative = (degrees: number) => gridPass(grid, Math.cos((degrees * Math.PI) / 180)) / gridPass(grid, 1)
    expect(relative(50)).toBeGreaterThan(0.02)
    expect(relative(57)).toBeCloseTo(0.02, 6)
    expect(relative(85)).toBeCloseTo(0.02, 6)
  })
})
