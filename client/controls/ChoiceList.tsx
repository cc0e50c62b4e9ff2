import { useId } from 'react'
import './Choice.css'
import type { ChoiceProps } from './Choice.tsx'

/** One of many, from the list that the person's own device draws: the quickest on a phone, and known to every reader. */
export function ChoiceList<Value extends string>({ label, labelHidden, value, options, onChoose, disabled = false }: ChoiceProps<Value>) {
  const listId = useId()
  return (
    <div className="choice-list">
      <label htmlFor={listId} className={labelHidden === true ? 'heard' : 'choice-label'}>
        {label}
      </label>
      <select
        id={listId}
        className="choice-list-select"
        value={value}
        disabled={disabled}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.currentTarget.value)
          if (chosen !== undefined) onChoose(chosen.value)
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  )
}
