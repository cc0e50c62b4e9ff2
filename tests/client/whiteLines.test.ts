import { describe, expect, it } from 'vitest'
import { clearOverWhite, whiteBehindInWords } from '../../client/gels/gelBehind.ts'
import { whiteLines } from '../../client/ladder/whiteLines.ts'
import type { Prediction } from '../../shared-core/predict/prediction.ts'

type Pass = readonly [number, number, number]

// Share of each camera channel that a sheet passes, and the weights by which a meter sees them: sRGB luminance, IEC 61966-2-1.
const METER = [0.2126, 0.7152, 0.0722] as const
const passes = { clear: [1, 1, 1], apricot: [0.92, 0.55, 0.18], moss: [0.22, 0.5, 0.08], straw: [0.95, 0.88, 0.6] } as const satisfies Record<string, Pass>

const meterSees = (pass: Pass) => pass.reduce((sum, share, i) => sum + share * METER[i]!, 0)

/** A background under lights of `energy` through gels; a clear energy of 1 clips it exactly and meters `CLEAR_METERED`. */
const CLEAR_METERED = 2.4
function lit(lights: readonly { readonly gel: keyof typeof passes; readonly energy: number }[]): Prediction {
  return {
    areas: [
      {
        id: 'background-centre',
        byLight: lights.map(({ gel, energy }, i) => ({
          lightId: String(i),
          exposureLuxSeconds: energy * meterSees(passes[gel]),
          stops: CLEAR_METERED + Math.log2(energy * meterSees(passes[gel])),
          channels: passes[gel].map((share) => share * energy),
        })),
      },
    ],
    lights: lights.map(({ gel }, i) => ({
      id: String(i),
      on: true,
      gel: {
        name: gel,
        clear: gel === 'clear',
        onWhite: '#808080',
        meterLossStops: -Math.log2(meterSees(passes[gel])),
        whiteOutStops: -Math.log2(Math.min(...passes[gel])),
      },
    })),
  } as unknown as Prediction
}

/** What a meter reads when the sheet's weakest channel just clips: turned up step by step, as one would on the set. */
function meteredWhenWhite(gel: keyof typeof passes): number {
  let energy = 1 / 1024
  while (Math.min(...passes[gel]) * energy < 1) energy *= 1.001
  return CLEAR_METERED + Math.log2(energy * meterSees(passes[gel]))
}

describe('white lines', () => {
  it('clear light’s line is the level at which it clips the background', () => {
    expect(whiteLines(lit([{ gel: 'clear', energy: 0.25 }]))[0]).toMatchObject({ name: 'clear', clear: true, stops: CLEAR_METERED })
  })

  it.each(['apricot', 'moss', 'straw'] as const)('%s’s line is where turning it up makes its weakest channel clip, from whatever power', (gel) => {
    for (const energy of [0.02, 0.3, 5]) {
      const line = whiteLines(lit([{ gel, energy }])).find(({ name }) => name === gel)
      expect(line?.stops).toBeCloseTo(meteredWhenWhite(gel), 2)
    }
  })

  it('reads the same lines off any light that reaches the background', () => {
    const off = (lights: Parameters<typeof lit>[0]) => new Map(whiteLines(lit(lights)).map(({ name, stops }) => [name, stops]))
    const byMoss = off([{ gel: 'moss', energy: 2 }, { gel: 'apricot', energy: 0.01 }])
    const byApricot = off([{ gel: 'moss', energy: 0.01 }, { gel: 'apricot', energy: 2 }])
    for (const name of ['clear', 'moss', 'apricot']) expect(byMoss.get(name)).toBeCloseTo(byApricot.get(name)!, 9)
  })

  it('draws none while nothing reaches the background', () => {
    expect(whiteLines(lit([{ gel: 'moss', energy: 0 }]))).toEqual([])
  })
})

describe('whether another gel would read white behind', () => {
  it('says by how much it is short, or that it does', () => {
    const over = clearOverWhite(lit([{ gel: 'apricot', energy: 4 }]), '0')
    expect(over).toBeCloseTo(2, 9)
    expect(whiteBehindInWords(over, -Math.log2(0.6))).toBe('white behind: yes')
    expect(whiteBehindInWords(over, 3.6)).toBe('white behind: no, 1.6 short')
  })

  it('does not speak of light that does not get there', () => {
    expect(whiteBehindInWords(clearOverWhite(lit([{ gel: 'moss', energy: 0 }]), '0'), 1)).toBe('does not reach the background')
  })
})
