import { useDeferredValue, useMemo, useState } from 'react'
import { Plus } from 'lucide-react'
import { setGels } from '../../shared-core/plan/edits/lights.ts'
import type { Gel } from '../../shared-core/plan/schema/kit.ts'
import { usePlanEdit } from '../session/usePlanEdit.ts'
import { useBoard } from '../session/useBoard.ts'
import { DrawerSheet } from './DrawerSheet.tsx'
import { GelCard } from './GelCard.tsx'
import './GelDrawer.css'
import { gelEffect } from './gelEffect.ts'
import { matchesHueWords } from './hueFilter.ts'
import { OwnSheet } from './OwnSheet.tsx'
import { useGelViewing } from './useGelViewing.ts'
import { clearOverWhite, whiteBehindInWords } from './gelBehind.ts'

interface GelDrawerProps {
  /** The light a sheet is taken for; null to keep the drawer itself in order. */
  readonly lightId: string | null
  readonly onTaken?: () => void
}

/** The sheets owned or to be bought, as what they do; found by hue words. */
export function GelDrawer({ lightId, onTaken }: GelDrawerProps) {
  const gels = useBoard((board) => board.shown.gels)
  const mayEdit = useBoard((board) => board.mayEdit)
  const over = useBoard((board) => (lightId === null ? null : clearOverWhite(board.prediction, lightId)))
  const edit = usePlanEdit()
  const viewing = useGelViewing(lightId)
  const [words, setWords] = useState('')
  const [making, setMaking] = useState(false)
  const sought = useDeferredValue(words)

  const cards = useMemo(
    () =>
      Object.entries(gels)
        .map(([id, gel]) => ({ id, gel, effect: gelEffect([gel], viewing) }))
        .filter(({ gel, effect }) => matchesHueWords(sought, [gel.name, effect.words, familyWord(gel)])),
    [gels, viewing, sought],
  )

  function take(gelId: string): void {
    if (lightId === null) return
    const written = edit((plan, lookId) => setGels(plan, lookId, lightId, [...(plan.looks[lookId]?.lights[lightId]?.gelIds ?? []), gelId]))
    if (written) onTaken?.()
  }

  return (
    <div className="gel-drawer">
      <div className="gel-drawer-top">
        <label className="gel-drawer-find">
          <span className="heard">Find by hue words</span>
          <input
            type="search"
            className="number-field-input"
            placeholder="Hue words: warm, violet, pale green"
            value={words}
            onChange={(event) => setWords(event.currentTarget.value)}
          />
        </label>
        {mayEdit && (
          <button type="button" className="button button-lined" aria-pressed={making} onClick={() => setMaking(!making)}>
            <Plus size={15} aria-hidden /> Make a sheet
          </button>
        )}
      </div>
      {making && mayEdit && <OwnSheet viewing={viewing} onDone={() => setMaking(false)} />}
      <ul className="gel-cards" aria-label="Sheets">
        {cards.map(({ id, gel, effect }) => (
          <GelCard
            key={id}
            name={gel.name}
            effect={effect}
            sheets={gel.sheets}
            {...(lightId === null ? {} : { whiteBehind: whiteBehindInWords(over, effect.whiteOutStops) })}
            {...(lightId !== null && mayEdit ? { onTake: () => take(id) } : {})}
          >
            {lightId === null && <DrawerSheet gelId={id} gel={gel} />}
          </GelCard>
        ))}
      </ul>
      {cards.length === 0 && <p className="gel-drawer-none">No sheet in the drawer answers to that. Make one, or try fewer words.</p>}
    </div>
  )
}

function familyWord({ source }: Gel): string {
  if (source.from === 'family') return source.family
  if (source.from === 'mired') return source.shiftMired > 0 ? 'warming correction' : 'cooling correction'
  return source.from === 'neutral' ? 'neutral grey' : ''
}
