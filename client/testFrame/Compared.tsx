import { useRef, useState, type ReactNode } from 'react'
import type { Alignment } from '../../shared-core/testFrame/align.ts'
import type { AreaDifference } from '../../shared-core/testFrame/areaDifferences.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import { Slider } from '../controls/Slider.tsx'
import { useElementSize } from '../frame/useElementSize.ts'
import { spreadMarks } from '../notes/pencil/spreadMarks.ts'
import { LaidOn, Predicted } from './Drawn.tsx'
import type { Photograph } from './photograph.ts'

interface ComparedProps {
  readonly way: 'beside' | 'wipe'
  readonly photo: Photograph
  readonly alignment: Alignment
  readonly picture: Bytes
  /** Those that differ, in the order of their numbers. */
  readonly differences: readonly AreaDifference[]
}

/** Photograph and prediction at the same size, beside each other or one wiped over the other. */
export function Compared({ way, photo, alignment, picture, differences }: ComparedProps) {
  const [wiped, setWiped] = useState(50)
  const { width, height } = picture
  const laid = <LaidOn photo={photo} alignment={alignment} width={2 * width} height={2 * height} />
  const frame = (children: ReactNode) => (
    <div className="tf-frame" style={{ aspectRatio: `${width} / ${height}`, maxWidth: `calc(var(--tf-tall) * ${width / height})` }}>{children}<Pins differences={differences} /></div>
  )
  if (way === 'beside') {
    return (
      <div className="tf-beside">
        <figure>{frame(laid)}<figcaption>photograph</figcaption></figure>
        <figure>{frame(<Predicted picture={picture} />)}<figcaption>prediction</figcaption></figure>
      </div>
    )
  }
  return (
    <div className="tf-wipe">
      {frame(<>
        <Predicted picture={picture} />
        <div className="tf-over" style={{ clipPath: `inset(0 ${100 - wiped}% 0 0)` }}>{laid}</div>
        <span className="tf-wipe-line" aria-hidden style={{ left: `${wiped}%` }} />
      </>)}
      <div className="page-panel tf-wipe-hand">
        <span aria-hidden>photograph</span>
        <Slider label="How far the photograph covers the prediction" labelHidden value={wiped} min={0} max={100} step={1} format={(value) => `${value} %`} onHold={setWiped} onDone={setWiped} />
        <span aria-hidden>prediction</span>
      </div>
    </div>
  )
}

const PIN_PIXELS = 22

/** The numbers of what differs, each beside its place and none on another. */
function Pins({ differences }: Pick<ComparedProps, 'differences'>) {
  const sheet = useRef<HTMLDivElement>(null)
  const size = useElementSize(sheet)
  const places = size === null ? [] : differences.map(({ frameX, frameY }) => ({ x: frameX * size.widthPixels, y: frameY * size.heightPixels }))
  const offsets = size === null ? [] : spreadMarks(places, size.widthPixels, size.heightPixels, PIN_PIXELS)
  return (
    <div ref={sheet} className="tf-over" aria-hidden>
      {places.map(({ x, y }, i) => (
        <span key={differences[i]!.id} className="tf-pin" style={{ left: x + offsets[i]![0], top: y + offsets[i]![1] }}>{i + 1}</span>
      ))}
    </div>
  )
}
