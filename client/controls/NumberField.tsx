import { useId, useState, type KeyboardEvent } from 'react'
import type { Result } from '../../shared-core/plan/result.ts'
import './NumberField.css'

export interface NumberFieldProps {
  /** What the number is, read out and shown; hidden (but still read out) with `labelHidden`. */
  readonly label: string
  readonly labelHidden?: boolean
  /** Null: nobody has said it; the field stands empty, with its placeholder. */
  readonly value: number | null
  /** Quiet words in the empty field: "not read". */
  readonly placeholder?: string
  /** The value as this person writes it, unit included: "1.14 m", "f/8 and 3 tenths". */
  readonly format: (value: number) => string
  /** What was typed as a value, or why not in words. Forgiving: the entry functions of the core. */
  readonly parse: (typed: string) => Result<{ readonly value: number }>
  /** Called once, when the entry is done. */
  readonly onDone: (value: number) => void
  /** Called when the field is left empty; the value is none then. Left out, an empty field cannot be read. */
  readonly onClear?: () => void
  /** Called on every arrow key before it is done, to show it everywhere; null lets go. */
  readonly onHold?: (value: number | null) => void
  /** The value one arrow key further: +1 or -1, times 1 plain, `shift`, or `alt`. Left out: arrows do nothing. */
  readonly step?: (value: number, direction: 1 | -1, size: 'plain' | 'shift' | 'alt') => number
  readonly disabled?: boolean
  /** Why it cannot be changed, as its description. */
  readonly because?: string | null
  readonly className?: string
}

/**
 * A number to type. The person writes as they speak; what cannot be read stays in the field with a reason beside it, so
 * that nothing typed is lost. Enter or leaving the field does it, Escape puts the old number back, arrows step.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, value, placeholder, parse, onDone, onClear, onHold, step, disabled = false, because = null } = props
  const format = (shown: number | null): string => (shown === null ? '' : props.format(shown))
  const [typed, setTyped] = useState<string | null>(null)
  const [problem, setProblem] = useState<string | null>(null)
  const [stepped, setStepped] = useState<number | null>(null)
  const fieldId = useId()
  const wordsId = useId()

  function letGo(): void {
    if (stepped !== null) onHold?.(null)
    setStepped(null)
    setTyped(null)
    setProblem(null)
  }

  /** Compares with nothing: while it is held here or elsewhere, `value` already is what it may become. */
  function finish(): void {
    if (stepped !== null && typed === null) {
      letGo()
      return onDone(stepped)
    }
    if (typed === null || typed.trim() === format(value)) return letGo()
    if (typed.trim() === '' && onClear !== undefined) {
      letGo()
      return onClear()
    }
    const read = parse(typed)
    if (!read.ok) return setProblem(read.message)
    letGo()
    onDone(read.value)
  }

  function stepBy(direction: 1 | -1, event: KeyboardEvent): void {
    const from = readOr(stepped ?? value)
    if (step === undefined || from === null || disabled) return
    event.preventDefault()
    const next = step(from, direction, event.altKey ? 'alt' : event.shiftKey ? 'shift' : 'plain')
    setTyped(null)
    setProblem(null)
    if (onHold === undefined) return onDone(next)
    setStepped(next)
    onHold(next)
  }

  function readOr(fallback: number | null): number | null {
    if (typed === null) return fallback
    const read = parse(typed)
    return read.ok ? read.value : fallback
  }

  function onKeyDown(event: KeyboardEvent<HTMLInputElement>): void {
    if (event.key === 'Enter') finish()
    else if (event.key === 'Escape' && (typed !== null || stepped !== null)) {
      event.stopPropagation()
      letGo()
    } else if (event.key === 'ArrowUp') stepBy(1, event)
    else if (event.key === 'ArrowDown') stepBy(-1, event)
  }

  const words = problem ?? (disabled ? because : null)
  return (
    <div className={`number-field ${props.className ?? ''}`}>
      <label htmlFor={fieldId} className={props.labelHidden === true ? 'heard' : 'number-field-label'}>
        {label}
      </label>
      <input
        id={fieldId}
        className="number-field-input"
        type="text"
        inputMode="text"
        autoComplete="off"
        autoCorrect="off"
        spellCheck={false}
        value={typed ?? format(stepped ?? value)}
        placeholder={placeholder}
        data-idle={typed === null}
        readOnly={disabled}
        aria-disabled={disabled}
        aria-invalid={problem !== null}
        aria-describedby={words === null ? undefined : wordsId}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onKeyDown={onKeyDown}
        onBlur={finish}
      />
      {words !== null && (
        <span id={wordsId} className={problem === null ? 'heard' : 'number-field-problem'} role={problem === null ? undefined : 'alert'}>
          {words}
        </span>
      )}
    </div>
  )
}
