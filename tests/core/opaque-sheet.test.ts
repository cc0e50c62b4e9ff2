import { describe, expect, it } from 'vitest'
import { whiteBalanceGains } from '../../shared-core/colour/camera.ts'
import { gelLosses } from '../../shared-core/colour/whiteOut.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import type { Gel } from '../../shared-core/plan/schema/kit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { predict } from '../../shared-core/predict/predict.ts'
import { flashSpectrum } from '../../shared-core/spectra/flash.ts'
import { transmittanceOfRows, type GelRow } from '../../shared-core/spectra/gel/rows.ts'

/** Every sheet of the demo measured as `rows`. */
function planMeasuring(rows: readonly GelRow[]): Plan {
  const gels = Object.entries(demoPlan.gels).map(([id, gel]): [string, Gel] => [id, { ...gel, source: { from: 'rows', rows: rows.map(([nm, share]) => [nm, share]) } }])
  return { ...demoPlan, gels: Object.fromEntries(gels) }
}

function unsound(found: unknown, where: string): string[] {
  if (typeof found === 'number') return Number.isFinite(found) ? [] : [`${where} is ${found}`]
  if (typeof found === 'string') return found.includes('NaN') || found.includes('Infinity') ? [`${where} is ${found}`] : []
  if (typeof found !== 'object' || found === null || ArrayBuffer.isView(found)) return []
  return Object.entries(found).flatMap(([key, value]) => unsound(value, `${where}.${key}`))
}

describe('a sheet measured as letting nothing through', () => {
  it.each<[string, readonly GelRow[]]>([
    ['at any wavelength', [[380, 0], [780, 0]]],
    ['but the far red', [[380, 0], [779, 0], [780, 1]]],
  ])('%s leaves every figure of a look a number', (_, rows) => {
    for (const lookId of Object.keys(demoPlan.looks)) {
      const prediction = predict(planMeasuring(rows), lookId)
      expect(prediction.lights.some(({ gel }) => !gel.clear)).toBe(true)
      expect(unsound(prediction, lookId)).toEqual([])
    }
  })

  it('shows as black', () => {
    const gelled = predict(planMeasuring([[380, 0], [780, 0]]), 'dusk').lights.map(({ gel }) => gel).filter(({ clear }) => !clear)
    for (const { onWhite, onSkin, meterLossStops } of gelled) {
      expect([onWhite, onSkin]).toEqual(['#000000', '#000000'])
      expect(meterLossStops).toBeGreaterThan(30)
    }
  })

  it('is capped far beyond any sheet: one of optical density 4 loses its density in stops by meter and in each channel', () => {
    // Optical density D = -log10 T (ISO 5-2), so a stop is log10 2 of it.
    const stops = 4 / Math.log10(2)
    const gains = whiteBalanceGains(5200)
    const losses = gelLosses({ flash: flashSpectrum(5200), gel: transmittanceOfRows([[380, 1e-4], [780, 1e-4]]), gains })
    expect(losses.meterLossStops).toBeCloseTo(stops, 8)
    for (const lost of losses.channelLossStops) expect(lost).toBeCloseTo(stops, 8)
    expect(losses.whiteOutStops).toBeCloseTo(stops, 8)
  })
})
