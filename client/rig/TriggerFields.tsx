import { useState } from 'react'
import type { Trigger } from '../../shared-core/rig/triggers.ts'
import { useBoard } from '../session/useBoard.ts'
import { useRig, useRigStore } from './useRig.ts'

/** Group and channel of a light's receiver, as set on it; for the same letter in every look. */
export function TriggerFields({ letter }: { readonly letter: string }) {
  const trigger = useRig(({ rig }) => rig.triggers[letter])
  const mayEdit = useBoard((board) => board.mayEdit)
  const store = useRigStore()
  const shown = trigger ?? { group: '', channel: '' }
  const keep = (change: Partial<Trigger>) => store.getState().write([{ kind: 'triggers', key: letter, entry: { ...shown, ...change } }])
  return (
    <div className="rig-trigger">
      <Field label="Group" value={shown.group} disabled={!mayEdit} onDone={(group) => keep({ group })} />
      <Field label="Channel" value={shown.channel} disabled={!mayEdit} onDone={(channel) => keep({ channel })} />
    </div>
  )
}

function Field({ label, value, disabled, onDone }: {
  readonly label: string; readonly value: string; readonly disabled: boolean; readonly onDone: (value: string) => void
}) {
  const [typed, setTyped] = useState<string | null>(null)
  const finish = () => {
    if (typed !== null && typed.trim() !== value) onDone(typed.trim())
    setTyped(null)
  }
  return (
    <label className="rig-trigger-field">
      <span>{label}</span>
      <input
        value={typed ?? value} placeholder="—" maxLength={8} disabled={disabled} autoComplete="off" autoCapitalize="characters"
        onChange={(event) => setTyped(event.target.value)} onBlur={finish} onKeyDown={(event) => event.key === 'Enter' && event.currentTarget.blur()}
      />
    </label>
  )
}
