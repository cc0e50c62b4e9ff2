import { RadioGroup } from 'radix-ui'
import { useId, type ReactNode } from 'react'
import './Choice.css'

export interface Option<Value extends string> {
  readonly value: Value
  /** In words; what is read out. */
  readonly label: string
  /** Drawn in place of the words, when a patch or a short form says it better. */
  readonly face?: ReactNode
}

export interface ChoiceProps<Value extends string> {
  readonly label: string
  readonly labelHidden?: boolean
  readonly value: Value
  readonly options: readonly Option<Value>[]
  readonly onChoose: (value: Value) => void
  readonly disabled?: boolean
}

/** One of a few, all in sight, side by side. */
export function Choice<Value extends string>({ label, labelHidden, value, options, onChoose, disabled = false }: ChoiceProps<Value>) {
  const labelId = useId()
  return (
    <div className="choice">
      <span id={labelId} className={labelHidden === true ? 'heard' : 'choice-label'}>
        {label}
      </span>
      <RadioGroup.Root
        className="choice-row"
        aria-labelledby={labelId}
        value={value}
        disabled={disabled}
        orientation="horizontal"
        onValueChange={(next) => {
          const chosen = options.find((option) => option.value === next)
          if (chosen !== undefined) onChoose(chosen.value)
        }}
      >
        {options.map((option) => (
          <RadioGroup.Item key={option.value} value={option.value} className="choice-option" aria-label={option.label}>
            {option.face ?? option.label}
          </RadioGroup.Item>
        ))}
      </RadioGroup.Root>
    </div>
  )
}
