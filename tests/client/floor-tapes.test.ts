import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { layTapes, type TapeSetting } from '../../client/floor/tapes/layTapes.ts'
import { offsetFromThing, placeTapes, type TapeToPlace } from '../../client/floor/tapes/placeTapes.ts'
import { sizeOfTape } from '../../client/floor/tapes/tapeSizes.ts'
import { labelOf, lightTape } from '../../client/floor/tapes/tapeText.ts'
import { thingsIn, thingsOf } from '../../client/floor/things.ts'
import { sharedArea, type Bounds } from '../../client/floor/view/bounds.ts'
import type { DrawnPoint } from '../../client/floor/view/projection.ts'
import { setBounds } from '../../client/floor/view/setBounds.ts'
import { fitTo } from '../../client/floor/view/viewTransform.ts'
import { demoLookId, demoPlan } from '../../shared-core/plan/demo/demoPlan.ts'
import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { predict } from '../../shared-core/predict/predict.ts'

// Checked against what a tape must do: be readable, hide nothing, stay put, and say what the plan says.

const panel: Bounds = { left: 0, top: 0, right: 700, bottom: 600 }
const thingAt = (x: number, y: number, size = 40): Bounds => ({ left: x - size / 2, top: y - size / 2, right: x + size / 2, bottom: y + size / 2 })
const tape = (id: string, thing: Bounds, looksTowards: DrawnPoint = [0, 0]): TapeToPlace => ({ id, width: 130, height: 36, thing, looksTowards })
const look = demoPlan.looks[demoLookId]!
const prediction = predict(demoPlan, demoLookId)
const metric = (metres: number) => formatLength(metres, 'metric')

const spot = fc.tuple(fc.integer({ min: 30, max: 670 }), fc.integer({ min: 30, max: 570 }))

describe('placing tapes', () => {
  it('never lays one on another, nor outside the panel, for as many lights as a set has', () => {
    fc.assert(fc.property(fc.array(spot, { minLength: 1, maxLength: 7 }), (spots) => {
      const things = spots.map(([x, y]) => thingAt(x, y))
      const placed = placeTapes(things.map((thing, i) => tape(String(i), thing)), things, panel)
      placed.forEach(({ bounds }, i) => {
        expect(bounds.left).toBeGreaterThanOrEqual(panel.left)
        expect(bounds.top).toBeGreaterThanOrEqual(panel.top)
        expect(bounds.right).toBeLessThanOrEqual(panel.right)
        expect(bounds.bottom).toBeLessThanOrEqual(panel.bottom)
        for (const other of placed.slice(0, i)) expect(sharedArea(bounds, other.bounds)).toBe(0)
      })
    }), { numRuns: 200 })
  })

  it('lies on no thing while there is room beside it', () => {
    const things = [thingAt(350, 300), thingAt(350, 240), thingAt(420, 300)]
    const placed = placeTapes(things.map((thing, i) => tape(String(i), thing)), things, panel)
    for (const { bounds } of placed) for (const thing of things) expect(sharedArea(bounds, thing)).toBe(0)
  })

  it('keeps out of the light: behind the thing and not before it', () => {
    const thing = thingAt(350, 300)
    const [placed] = placeTapes([tape('a', thing, [0, -1])], [thing], panel)
    expect((placed!.bounds.top + placed!.bounds.bottom) / 2).toBeGreaterThan(300)
  })

  it('stays where it lay while something else comes by, as long as nothing touches it', () => {
    const thing = thingAt(200, 300)
    const alone = placeTapes([tape('a', thing)], [thing], panel)[0]!
    const before = new Map([['a', offsetFromThing(alone, thing)]])
    for (let x = 640; x > 420; x -= 20) {
      const other = thingAt(x, 300)
      const [still] = placeTapes([tape('a', thing), tape('b', other)], [thing, other], panel, before)
      expect(still!.bounds).toEqual(alone.bounds)
    }
  })
})

describe('what tapes say', () => {
  const entries = Object.entries(look.lights)

  it('is the letter, the distance predicted, the height planned and the power as the panel writes it', () => {
    for (const [id, light] of entries) {
      const predicted = prediction.lights.find((one) => one.id === id)!
      const { letter, lines, spoken } = lightTape(light, predicted, metric)
      expect(letter).toBe(light.letter)
      expect(lines[0]).toBe(`${predicted.distanceMetres.toFixed(2)} m · up ${light.place.zMetres.toFixed(2)} m`)
      expect(lines[1]).toContain(predicted.powerText)
      expect(lines[1]).toContain('Ws')
      expect(spoken).toContain(`Light ${light.letter}`)
      expect(spoken).toContain(predicted.summary)
    }
  })

  it('is in feet and inches for who measures so', () => {
    // 1 ft = 0.3048 m (international yard and pound agreement, 1959): 1.8288 m is six feet.
    const [, light] = entries[0]!
    const { lines } = lightTape({ ...light, place: { ...light.place, zMetres: 1.8288 } }, undefined, (metres) => formatLength(metres, 'imperial'))
    expect(lines[0]).toBe("up 6'")
  })

  it('is off for a light that is off, on a small panel too', () => {
    const [, light] = entries[0]!
    expect(lightTape({ ...light, on: false }, prediction.lights[0], metric).lines[1]).toBe('off')
    expect(lightTape({ ...light, on: false }, prediction.lights[0], metric, true).lines[0]).toBe('off')
  })

  it('shortens a long label but reads all of it out', () => {
    const [id, piece] = Object.entries(look.pieces)[0]!
    const label = 'A flag with a very long name that nobody could read on a plan'
    const text = labelOf({ kind: 'piece', id }, { ...look, pieces: { [id]: { ...piece, label } } }, [0, 0, 1], metric)
    expect(text.lines[0]!.length).toBeLessThan(label.length)
    expect(text.spoken).toContain(label)
  })

  it('ends a long label at a comma rather than in a word', () => {
    const [id, piece] = Object.entries(look.pieces)[0]!
    const named = (label: string) => labelOf({ kind: 'piece', id }, { ...look, pieces: { [id]: { ...piece, label } } }, [0, 0, 1], metric).lines[0]
    expect(named('White board, by the door, leaning')).toBe('White board')
    expect(named('White board, right')).toBe('White board, right')
  })
})

describe('tapes over the demo set', () => {
  const things = thingsIn(thingsOf(demoPlan, look), 'floor')
  const setting = (width: number, height: number): TapeSetting => {
    const size = { width, height }
    return {
      look, prediction, view: 'floor', panel: size, length: metric, lineHeight: 14, selected: null,
      measure: (text, isLetter) => text.length * (isLetter ? 13 : 6.2),
      transform: fitTo(setBounds(things, 'floor'), size, { left: 36, top: 34, right: 36, bottom: 54 }),
    }
  }

  it('are one for each thing, none on another, at the size of a laptop', () => {
    const laid = layTapes(things, setting(560, 640), new Map())
    expect(laid).toHaveLength(things.length)
    laid.forEach((one, i) => laid.slice(0, i).forEach((other) => expect(sharedArea(one.bounds, other.bounds)).toBe(0)))
    expect(laid.every((one) => one.shown)).toBe(true)
  })

  it('are short on a phone, where labels wait until they are wanted', () => {
    const laid = layTapes(things, setting(360, 560), new Map())
    expect(laid.filter((one) => one.shown).map((one) => one.thing.key.kind)).toEqual(Object.keys(look.lights).map(() => 'light'))
    const chosen = layTapes(things, { ...setting(360, 560), selected: { kind: 'camera' } }, new Map())
    expect(chosen.some((one) => one.shown && one.thing.key.kind === 'camera')).toBe(true)
  })

  it('of things outside the panel are kept for the keyboard and not shown', () => {
    const far = { ...setting(560, 640), transform: { pixelsPerMetre: 100, offsetX: 5000, offsetY: 5000 } }
    const laid = layTapes(things, far, new Map())
    expect(laid).toHaveLength(things.length)
    expect(laid.some((one) => one.shown)).toBe(false)
  })

  it('have the size of their text', () => {
    const size = sizeOfTape({ letter: 'A', lines: ['1.14 m', ''], spoken: '' }, (text) => text.length * 6, 14)
    expect(size.width).toBeGreaterThan(7 * 6)
    expect(size.height).toBeGreaterThanOrEqual(28)
  })
})
