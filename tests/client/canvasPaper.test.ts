import { describe, expect, it } from 'vitest'
import { CanvasPaper, type PageClock, type PaperContext } from '../../client/frame/picture/canvasPaper.ts'

const image = (level: number, width = 2, height = 1): ImageData =>
  ({ width, height, data: new Uint8ClampedArray(4 * width * height).fill(level), colorSpace: 'srgb' }) as ImageData

/** Paper whose canvas is a list of bytes, and a clock that is moved on by hand. */
function paper() {
  let pixels = new Uint8ClampedArray(8)
  let time = 0
  let waiting: ((now: number) => void)[] = []
  const canvas = { width: 2, height: 1 }
  const context = {
    canvas,
    getImageData: () => ({ data: pixels.slice() }),
    createImageData: (width: number, height: number) => image(0, width, height),
    putImageData: ({ data }: ImageData) => { pixels = data.slice() },
  } as unknown as PaperContext
  const clock: PageClock = { now: () => time, onNextFrame: (step) => { waiting.push(step) } }
  return {
    canvas,
    laid: new CanvasPaper(context, clock),
    level: () => pixels[0]!,
    pass(milliseconds: number): void {
      time += milliseconds
      const steps = waiting
      waiting = []
      for (const step of steps) step(time)
    },
  }
}

describe('pictures laid on a canvas', () => {
  it('at once, where nothing fades', () => {
    const { laid, level } = paper()
    laid.lay(image(200), false)
    expect(level()).toBe(200)
  })

  it('fade evenly and end on the picture', () => {
    const { laid, level, pass } = paper()
    laid.lay(image(200), true)
    pass(75)
    expect(level()).toBe(100)
    pass(75)
    expect(level()).toBe(200)
  })

  it('that come during a fade are the ones that stay', () => {
    const { laid, level, pass } = paper()
    laid.lay(image(200), true)
    pass(75)
    laid.lay(image(40), false)
    pass(30)
    expect(level()).toBeLessThan(60)
    pass(200)
    pass(200)
    expect(level()).toBe(40)
  })

  it('never step back to an older fade', () => {
    const { laid, level, pass } = paper()
    laid.lay(image(200), true)
    pass(75)
    laid.lay(image(0), true)
    pass(75)
    expect(level()).toBe(50)
    pass(75)
    expect(level()).toBe(0)
  })

  it('of another size take over at once', () => {
    const { laid, level, pass, canvas } = paper()
    laid.lay(image(200), true)
    laid.lay(image(30, 4, 2), false)
    pass(200)
    expect([canvas.width, canvas.height, level()]).toEqual([4, 2, 30])
  })
})
