import { NumberField } from '../controls/NumberField.tsx'
import { SwatchField } from '../controls/SwatchField.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../session/usePlanEdit.ts'
import { lengthIn, type Quantity } from './quantities.ts'

interface QuantityFieldProps {
  readonly label: string
  readonly labelHidden?: boolean
  readonly value: number
  readonly quantity: Quantity
  /** The edit that sets the number. */
  readonly change: (value: number) => MakeEdit
}

/** A number of the plan: shown to everybody while it is stepped, written when done, locked for who may not. */
export function QuantityField({ label, labelHidden = false, value, quantity, change }: QuantityFieldProps) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const because = useBoard((board) => board.mayNotBecause)
  const edit = usePlanEdit()
  return (
    <NumberField
      label={label}
      labelHidden={labelHidden}
      value={value}
      format={quantity.format}
      parse={quantity.parse}
      {...(mayEdit ? { step: quantity.step } : {})}
      onDone={(next) => edit(change(next))}
      onHold={(next) => edit.hold(next === null ? null : change(next))}
      disabled={!mayEdit}
      because={because}
    />
  )
}

/** A length in this person's units. */
export function LengthField(props: Omit<QuantityFieldProps, 'quantity'>) {
  const units = useBoard((board) => board.units)
  return <QuantityField {...props} quantity={lengthIn(units)} />
}

interface PlanSwatchProps {
  readonly label: string
  readonly value: string
  readonly usual?: readonly { readonly name: string; readonly swatch: string }[]
  readonly change: (swatch: string) => MakeEdit
}

/** A surface's colour in the plan. */
export function PlanSwatch({ label, value, usual, change }: PlanSwatchProps) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  return (
    <SwatchField
      label={label}
      value={value}
      {...(usual ? { usual } : {})}
      disabled={!mayEdit}
      onHold={(next) => edit.hold(next === null ? null : change(next))}
      onDone={(next) => edit(change(next))}
    />
  )
}
