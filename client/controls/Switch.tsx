import { Switch as Radix } from 'radix-ui'
import { useId } from 'react'
import './Switch.css'

export interface SwitchProps {
  readonly label: string
  readonly on: boolean
  readonly onTurn: (on: boolean) => void
  readonly disabled?: boolean
}

/** On or off, at once; says which in the word beside it and not by shade alone. */
export function Switch({ label, on, onTurn, disabled = false }: SwitchProps) {
  const switchId = useId()
  return (
    <div className="switch">
      <label htmlFor={switchId} className="switch-label">
        {label}
      </label>
      <span className="switch-state" aria-hidden>
        {on ? 'on' : 'off'}
      </span>
      <Radix.Root id={switchId} className="switch-root" checked={on} disabled={disabled} onCheckedChange={onTurn}>
        <Radix.Thumb className="switch-thumb" />
      </Radix.Root>
    </div>
  )
}
