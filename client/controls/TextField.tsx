import { useId, useState, type KeyboardEvent } from 'react'
import './NumberField.css'

export interface TextFieldProps {
  readonly label: string
  readonly labelHidden?: boolean
  readonly value: string
  readonly onDone: (value: string) => void
  readonly maxLength: number
  /** More than one line: Enter makes a new one. */
  readonly lines?: number
  readonly placeholder?: string
  readonly disabled?: boolean
  readonly className?: string
}

/** Words to type. Leaving the field (or Enter, on one line) does it; Escape puts the old words back. */
export function TextField({ label, labelHidden, value, onDone, maxLength, lines = 1, placeholder, disabled = false, className = '' }: TextFieldProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const fieldId = useId()

  function finish(): void {
    setTyped(null)
    if (typed !== null && typed !== value) onDone(typed)
  }

  const shared = {
    id: fieldId,
    className: 'number-field-input',
    value: typed ?? value,
    maxLength,
    placeholder,
    readOnly: disabled,
    'data-idle': typed === null,
    'aria-disabled': disabled,
    onBlur: finish,
    onKeyDown: (event: KeyboardEvent) => {
      if (event.key === 'Enter' && lines === 1) finish()
      else if (event.key === 'Escape' && typed !== null) {
        event.stopPropagation()
        setTyped(null)
      }
    },
  }
  return (
    <div className={`number-field ${className}`}>
      <label htmlFor={fieldId} className={labelHidden === true ? 'heard' : 'number-field-label'}>
        {label}
      </label>
      {lines === 1 ? (
        <input type="text" autoComplete="off" {...shared} onChange={(event) => setTyped(event.currentTarget.value)} />
      ) : (
        <textarea rows={lines} {...shared} onChange={(event) => setTyped(event.currentTarget.value)} />
      )}
    </div>
  )
}
