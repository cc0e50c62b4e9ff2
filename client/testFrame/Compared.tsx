import { useState, type ReactNode } from 'react'
import type { Alignment } from '../../shared-core/testFrame/align.ts'
import type { AreaDifference } from '../../shared-core/testFrame/areaDifferences.ts'
import type { Bytes } from '../../shared-core/testFrame/sample.ts'
import { Slider } from '../controls/Slider.tsx'
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
  const pins = differences.map(({ id, frameX, frameY }, i) => (
    <span key={id} className="tf-pin" aria-hidden style={{ left: `min(${100 * frameX}%, 100% - 2rem)`, top: `max(${100 * frameY}%, 1.625rem)` }}>{i + 1}</span>
  ))
  const frame = (children: ReactNode) => (
    <div className="tf-frame" style={{ aspectRatio: `${width} / ${height}`, maxWidth: `calc(var(--tf-tall) * ${width / height})` }}>{children}{pins}</div>
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
      <div className="tf-wipe-hand">
        <span aria-hidden>photograph</span>
        <Slider label="How far the photograph covers the prediction" labelHidden value={wiped} min={0} max={100} step={1} format={(value) => `${value} %`} onHold={setWiped} onDone={setWiped} />
        <span aria-hidden>prediction</span>
      </div>
    </div>
  )
}
