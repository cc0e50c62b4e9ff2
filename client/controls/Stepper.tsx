import { Minus, Plus } from 'lucide-react'
import type { ReactNode } from 'react'
import './Stepper.css'

export interface StepperProps {
  /** What is stepped: "power of B". */
  readonly label: string
  /** What one press does: "a tenth". Read out with each button. */
  readonly stepWords: string
  /** What stands between the buttons; often a NumberField. */
  readonly children: ReactNode
  readonly onStep: (direction: 1 | -1) => void
  readonly atLowest?: boolean
  readonly atHighest?: boolean
  readonly disabled?: boolean
}

/** Two big buttons around a value: for a thumb in a glove rather than a drag. */
export function Stepper({ label, stepWords, children, onStep, atLowest = false, atHighest = false, disabled = false }: StepperProps) {
  return (
    <div className="stepper" role="group" aria-label={label}>
      <button
        type="button"
        className="button button-bare stepper-button"
        aria-label={`${label} down ${stepWords}`}
        aria-disabled={disabled || atLowest}
        onClick={() => !disabled && !atLowest && onStep(-1)}
      >
        <Minus size={16} aria-hidden />
      </button>
      <div className="stepper-value">{children}</div>
      <button
        type="button"
        className="button button-bare stepper-button"
        aria-label={`${label} up ${stepWords}`}
        aria-disabled={disabled || atHighest}
        onClick={() => !disabled && !atHighest && onStep(1)}
      >
        <Plus size={16} aria-hidden />
      </button>
    </div>
  )
}
