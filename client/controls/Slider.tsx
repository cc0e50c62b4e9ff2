import { Slider as Radix } from 'radix-ui'
import './Slider.css'

export interface SliderProps {
  readonly label: string
  readonly labelHidden?: boolean
  readonly value: number
  readonly min: number
  readonly max: number
  readonly step: number
  /** The value in words with its unit, shown and read out. */
  readonly format: (value: number) => string
  /** While the hand is on it. */
  readonly onHold: (value: number) => void
  /** When the hand lets go. */
  readonly onDone: (value: number) => void
  readonly disabled?: boolean
  /** A CSS background for the track, where the scale is one of colour or tone. */
  readonly track?: string
}

/** A value to drag along its range; arrows step, Page keys take ten steps, Home and End go to the ends. */
export function Slider({ label, labelHidden, value, min, max, step, format, onHold, onDone, disabled = false, track }: SliderProps) {
  const words = format(value)
  return (
    <div className="slider">
      <span className={labelHidden === true ? 'heard' : 'slider-label'}>
        <span>{label}</span>
        <span className="slider-value">{words}</span>
      </span>
      <Radix.Root
        className="slider-root"
        value={[value]}
        min={min}
        max={max}
        step={step}
        disabled={disabled}
        onValueChange={([next]) => next !== undefined && onHold(next)}
        onValueCommit={([next]) => next !== undefined && onDone(next)}
      >
        <Radix.Track className="slider-track" style={track === undefined ? undefined : { background: track }}>
          {track === undefined && <Radix.Range className="slider-range" />}
        </Radix.Track>
        <Radix.Thumb className="slider-thumb" aria-label={label} aria-valuetext={words} />
      </Radix.Root>
    </div>
  )
}
