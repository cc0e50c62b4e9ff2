import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { matchColour, type ColourMatch, type ColourTarget } from '../../shared-core/ask/matchColour.ts'
import { VISIBLE_STEP } from '../../shared-core/ask/visibleChange.ts'
import { clipChannels } from '../../shared-core/colour/camera.ts'
import { xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import { middleOfSquare } from '../../shared-core/picture/middleOfSquare.ts'
import { demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { applyEdit } from '../../shared-core/plan/edit.ts'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { hexFromLinear, linearFromHex } from '../../shared-core/spectra/srgb.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'
import { rememberingPredictor } from './rememberingPredictor.ts'

const lookId = 'dusk-draft-1'
const areaId = 'cheek-right'
const predictor = rememberingPredictor()
const picture = new LookPicture(decodeSubject(readFileSync(new URL('../../shared-core/subject/asset/subject.bin', import.meta.url))))
/** As large as the Frame on a laptop. */
const request = { width: 440, height: 660, soloLightId: null, coarse: false }

/** By individual typology angle (classes of Chardon, Cretois and Hourseau 1991; Del Bino and Bernerd 2013). */
const SKINS = { fair: 48, medium: 20, deep: -40 }
const UNKNOWN = Object.entries(demoPlan.gels).flatMap(([id, { source }]) => (source.from === 'neutral' ? [] : [id]))

function changed(plan: Plan, ...changes: readonly (readonly [path: string, set: number | readonly string[]])[]): Plan {
  return applyEdit(plan, { name: 'test', changes: changes.map(([path, set]) => ({ path: ['looks', lookId, ...path.split('.')], set })) })
}

/** What an eye-dropper of three by three pixels takes off the cheek of the Frame: camera channels, and what a display shows. */
function dropped(plan: Plan): { readonly channels: ColourTarget; readonly display: ColourTarget } {
  const { width, height, linear, rgba } = picture.draw(plan, lookId, request)
  const area = predictor(plan, lookId).areas.find(({ id }) => id === areaId)!
  const [x, y] = [Math.floor(area.frameX * width), Math.floor(area.frameY * height)]
  const channels = middleOfSquare({ width, height, values: linear, stride: 3 }, x, y, 1)
  const bytes = middleOfSquare({ width, height, values: rgba, stride: 4 }, x, y, 1)
  const hex = `#${bytes.map((byte) => Math.round(byte).toString(16).padStart(2, '0')).join('')}`
  return {
    channels: { xyz: xyzFromChannels(clipChannels(channels), plan.looks[lookId]!.camera.whiteBalanceKelvin) },
    display: { hex, isOwnPicture: true },
  }
}

describe('a gel made unknown is found again from a picture made with it', () => {
  for (const [skin, itaDegrees] of Object.entries(SKINS)) {
    it(`on ${skin} skin, every coloured sheet of the drawer`, () => {
      const onSkin = changed(demoPlan, ['subject.skinItaDegrees', itaDegrees])
      const forgotten = changed(onSkin, ['lights.c.gelIds', []], ['lights.c.energyJoules', 60])
      const rankOf = (match: ColourMatch, gelId: string): number => match.ways.findIndex(({ gelIds }) => gelIds.join() === gelId)
      let firstByDisplay = 0
      for (const gelId of UNKNOWN) {
        const { channels, display } = dropped(changed(onSkin, ['lights.c.gelIds', [gelId]]))
        expect(rankOf(matchColour(forgotten, lookId, areaId, channels, predictor, 'c'), gelId), `${gelId} by its reading`).toBe(0)
        const byDisplay = matchColour(forgotten, lookId, areaId, display, predictor, 'c')
        const rank = rankOf(byDisplay, gelId)
        if (rank === 0) firstByDisplay++
        // Two neighbours in hue may change places where a display's eight bits, or a light's edge a pixel away, hide half a visible step.
        expect(rank, `${gelId} off the display`).toBeLessThanOrEqual(1)
        expect(rank).toBeGreaterThanOrEqual(0)
        expect(byDisplay.ways[rank]!.difference - byDisplay.ways[0]!.difference, gelId).toBeLessThan(VISIBLE_STEP / 2)
      }
      expect(UNKNOWN.length).toBe(25)
      expect(firstByDisplay).toBeGreaterThanOrEqual(23)
    }, 180_000)
  }

  it('a picture dropped as any other, with the stray light over it, is further off', () => {
    // A veil lifts what is dark: by the demo's 1.5 % of a bright frame, a deep colour on deep skin by a visible step.
    const onSkin = changed(demoPlan, ['subject.skinItaDegrees', SKINS.deep], ['lights.c.gelIds', ['green']])
    const { display } = dropped(onSkin)
    const hex = 'hex' in display ? display.hex : ''
    const own = matchColour(onSkin, lookId, areaId, { hex, isOwnPicture: true }, predictor, 'c')
    const other = matchColour(onSkin, lookId, areaId, { hex }, predictor, 'c')
    const difference = ({ ways }: ColourMatch): number => ways.find(({ gelIds }) => gelIds.join() === 'green')!.difference
    expect(difference(own)).toBeLessThan(difference(other))
  })
})

describe('the colour of a small square', () => {
  const square = (rows: readonly (readonly string[])[]) => ({
    width: rows[0]!.length, height: rows.length, stride: 3 as const, values: rows.flat().flatMap((hex) => [...linearFromHex(hex)]),
  })
  const [red, white] = ['#a01020', '#ffffff']

  it('is that of what fills most of it, whatever crosses its side', () => {
    expect(hexFromLinear(middleOfSquare(square([[red, red, white], [red, red, white], [red, red, white]]), 1, 1, 1))).toBe(red)
  })

  it('takes what there is of it at the rim of the picture, and nothing outside', () => {
    expect(hexFromLinear(middleOfSquare(square([[red, white], [white, white]]), 0, 0, 0))).toBe(red)
    expect(hexFromLinear(middleOfSquare(square([[white, white], [white, red]]), 0, 0, 1))).toBe(white)
    expect(() => middleOfSquare(square([[red]]), 5, 5, 1)).toThrow(RangeError)
  })
})
