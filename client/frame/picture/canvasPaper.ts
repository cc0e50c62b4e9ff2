/** The part of a 2D context that paper needs. */
export type PaperContext = Pick<CanvasRenderingContext2D, 'getImageData' | 'putImageData' | 'createImageData'> & {
  readonly canvas: { width: number; height: number }
}

/** Time on the page, and what comes with its next frame. */
export interface PageClock {
  now(): number
  onNextFrame(step: (now: number) => void): void
}

const pageClock: PageClock = {
  now: () => performance.now(),
  onNextFrame: (step) => { requestAnimationFrame(step) },
}

/** Lights fade, so that the eye sees the change and nothing on the screen flashes. */
const FADE_MS = 150

interface Fade {
  readonly from: Uint8ClampedArray
  readonly mixed: ImageData
  readonly start: number
  to: ImageData
}

/**
 * Lays pictures on one canvas, at once or over a short fade from what is there. A picture that comes during a fade is
 * what the fade goes on to: the newest laid is always the one that stays.
 */
export class CanvasPaper {
  private fade: Fade | null = null

  constructor(private readonly context: PaperContext, private readonly clock: PageClock = pageClock) {}

  /** @param image the same size as the picture, in the canvas's colours */
  lay(image: ImageData, fades: boolean): void {
    const { canvas } = this.context
    if (canvas.width !== image.width || canvas.height !== image.height) {
      this.fade = null
      canvas.width = image.width
      canvas.height = image.height
      this.context.putImageData(image, 0, 0)
    } else if (fades) {
      this.startFade(image)
    } else if (this.fade !== null) {
      this.fade.to = image
    } else {
      this.context.putImageData(image, 0, 0)
    }
  }

  private startFade(to: ImageData): void {
    const { width, height } = to
    const fade: Fade = {
      from: this.context.getImageData(0, 0, width, height).data,
      mixed: this.context.createImageData(width, height),
      start: this.clock.now(),
      to,
    }
    this.fade = fade
    this.clock.onNextFrame((now) => this.step(fade, now))
  }

  private step(fade: Fade, now: number): void {
    // A newer fade, or a canvas of another size, has taken over.
    if (this.fade !== fade) return
    const done = Math.min(1, Math.max(0, (now - fade.start) / FADE_MS))
    if (done === 1) {
      this.fade = null
      this.context.putImageData(fade.to, 0, 0)
      return
    }
    const { data } = fade.mixed
    const to = fade.to.data
    for (let i = 0; i < data.length; i++) data[i] = fade.from[i]! + (to[i]! - fade.from[i]!) * done
    this.context.putImageData(fade.mixed, 0, 0)
    this.clock.onNextFrame((next) => this.step(fade, next))
  }
}
