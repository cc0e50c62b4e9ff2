import { describe, expect, it } from 'vitest'
import { cameraEntries } from '../../client/panels/camera/cameraEntries.ts'
import { shortcutOf, type KeyPress } from '../../client/shell/shortcuts.ts'

const press = (key: string, held: Partial<KeyPress> = {}) => shortcutOf({ key, command: false, shift: false, alt: false, ...held })

describe('shortcuts', () => {
  it('undo and redo as every system has them', () => {
    expect(press('z', { command: true })).toEqual({ does: 'undo' })
    expect(press('Z', { command: true, shift: true })).toEqual({ does: 'redo' })
    expect(press('y', { command: true })).toEqual({ does: 'redo' })
  })

  it('a bare letter picks a light, with Ctrl or Alt it is the browser’s', () => {
    expect(press('b')).toEqual({ does: 'light', letter: 'B' })
    expect(press('b', { command: true })).toBeNull()
    expect(press('b', { alt: true })).toBeNull()
  })

  it('the question mark lists them and the slash asks, whatever shift it takes on this keyboard', () => {
    expect(press('?', { shift: true })).toEqual({ does: 'list' })
    expect(press('?')).toEqual({ does: 'list' })
    expect(press('/')).toEqual({ does: 'ask' })
    expect(press('/', { shift: true })).toEqual({ does: 'ask' })
  })
})

describe('steps of the camera line', () => {
  it('f/8 goes up by a tenth, a third and a whole stop', () => {
    // One stop is a factor of the square root of two in f-number: ISO 517.
    const { step } = cameraEntries.fNumber
    expect(step(8, 1, 'plain')).toBeCloseTo(8 * Math.SQRT2 ** 0.1, 12)
    expect(step(8, 1, 'shift')).toBeCloseTo(8 * Math.SQRT2 ** (1 / 3), 12)
    expect(step(8, -1, 'alt')).toBeCloseTo(8 / Math.SQRT2, 12)
  })

  it('ten tenths up and down come back to f/8 itself', () => {
    const { step } = cameraEntries.fNumber
    let fNumber = 8
    for (let count = 0; count < 10; count++) fNumber = step(fNumber, 1, 'plain')
    for (let count = 0; count < 10; count++) fNumber = step(fNumber, -1, 'plain')
    expect(fNumber).toBe(8)
  })

  // The engraved series of shutters and film speeds: common practice, no source.
  it.each([
    ['1/160 up to 1/200', 'shutterSeconds', 1 / 160, 1, 'plain', 1 / 200],
    ['1/160 down to 1/125', 'shutterSeconds', 1 / 160, -1, 'plain', 1 / 125],
    ['1/150, between two, up to 1/160', 'shutterSeconds', 1 / 150, 1, 'plain', 1 / 160],
    ['1/150, between two, down to 1/125', 'shutterSeconds', 1 / 150, -1, 'plain', 1 / 125],
    ['ISO 200 up a stop to 400', 'isoSpeed', 200, 1, 'alt', 400],
    ['ISO 200 down a third to 160', 'isoSpeed', 200, -1, 'plain', 160],
    ['ISO 210 up to 250', 'isoSpeed', 210, 1, 'plain', 250],
    ['the lowest film speed stays', 'isoSpeed', 25, -1, 'plain', 25],
  ] as const)('%s', (_words, key, from, direction, size, to) => {
    expect(cameraEntries[key].step(from, direction, size)).toBe(to)
  })
})
