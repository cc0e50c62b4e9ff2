import { useEffect, useId, useRef, useState } from 'react'
import './SwatchField.css'

export interface SwatchFieldProps {
  readonly label: string
  /** `#rrggbb`, as the surface looks under daylight. */
  readonly value: string
  readonly onHold: (value: string | null) => void
  readonly onDone: (value: string) => void
  /** Usual ones to pick from, in words. */
  readonly usual?: readonly { readonly name: string; readonly swatch: string }[]
  readonly disabled?: boolean
}

/** A surface's colour: the patch on mid-grey, the usual ones by name, and the code itself to type. */
export function SwatchField({ label, value, onHold, onDone, usual = [], disabled = false }: SwatchFieldProps) {
  const [typed, setTyped] = useState<string | null>(null)
  const [held, setHeld] = useState<string | null>(null)
  const patchId = useId()
  const patch = useRef<HTMLInputElement>(null)
  const code = typed === null ? null : readSwatch(typed)

  // The moment the picker is done: React's own onChange comes with every move in it.
  useEffect(() => {
    const input = patch.current
    if (input === null) return
    const onPicked = () => {
      setHeld(null)
      onHold(null)
      onDone(input.value)
    }
    input.addEventListener('change', onPicked)
    return () => input.removeEventListener('change', onPicked)
  }, [onHold, onDone])

  function finish(): void {
    if (code !== null && code !== value) onDone(code)
    setTyped(null)
  }

  return (
    <fieldset className="swatch-field" disabled={disabled}>
      <legend className="swatch-field-label">{label}</legend>
      <div className="swatch-field-row">
        <label className="swatch-field-patch" htmlFor={patchId}>
          <span className="heard">{label}, pick a colour</span>
          <input
            ref={patch}
            id={patchId}
            type="color"
            value={held ?? value}
            onChange={(event) => {
              setHeld(event.currentTarget.value)
              onHold(event.currentTarget.value)
            }}
          />
        </label>
        <input
          className="number-field-input swatch-field-code"
          type="text"
          aria-label={`${label} as a colour code`}
          aria-invalid={typed !== null && code === null}
          spellCheck={false}
          autoComplete="off"
          value={typed ?? held ?? value}
          onChange={(event) => setTyped(event.currentTarget.value)}
          onBlur={finish}
          onKeyDown={(event) => event.key === 'Enter' && finish()}
        />
        {usual.map((one) => (
          <button
            key={one.name}
            type="button"
            className="button button-bare swatch-field-usual"
            aria-pressed={one.swatch === value}
            aria-label={`${label}: ${one.name}`}
            title={one.name}
            onClick={() => onDone(one.swatch)}
          >
            <span className="swatch-field-dot" style={{ background: one.swatch }} />
          </button>
        ))}
      </div>
    </fieldset>
  )
}

/** `#rrggbb` from "7c7c7c", "#7C7C7C" or "#777"; null when it is no colour code. */
function readSwatch(typed: string): string | null {
  const code = typed.trim().replace(/^#/, '').toLowerCase()
  if (/^[0-9a-f]{6}$/.test(code)) return `#${code}`
  if (/^[0-9a-f]{3}$/.test(code)) return `#${[...code].map((digit) => digit + digit).join('')}`
  return null
}
