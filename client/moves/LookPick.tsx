import { useId } from 'react'
import './LookPick.css'

interface LookPickProps {
  readonly label: string
  readonly value: string
  readonly options: readonly { readonly value: string; readonly label: string }[]
  readonly onChoose: (lookId: string) => void
}

/** One look of the job, by its name. */
export function LookPick({ label, value, options, onChoose }: LookPickProps) {
  const id = useId()
  return (
    <div className="look-pick">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => onChoose(target.value)}>
        {options.map((one) => <option key={one.value} value={one.value}>{one.label}</option>)}
      </select>
    </div>
  )
}
