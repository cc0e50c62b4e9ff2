import { capital } from '../../../shared-core/plan/capital.ts'
import { useBoard } from '../../session/useBoard.ts'
import { TrueColourReading } from '../TrueColourHere.tsx'
import { plateLetters } from '../plateLetters.ts'

/** Everything that must read true in this look, with the clean plates planned. */
export function TrueColours() {
  const marked = useBoard((board) => board.shown.looks[board.lookId]?.mustReadTrue)
  const areas = useBoard((board) => board.prediction.areas)
  const lights = useBoard((board) => board.prediction.lights)
  const select = useBoard((board) => board.select)
  const entries = Object.entries(marked ?? {}).flatMap(([id, { cleanPlatePlanned }]) => {
    const area = areas.find((one) => one.id === id)
    return area === undefined ? [] : [{ id, label: area.label, cleanPlatePlanned }]
  })
  if (entries.length === 0) return <p className="true-colour-words">Nothing is marked. Touch an area, or add a point on a garment or a pack, and mark it there</p>
  return (
    <ul className="true-colour-list">
      {entries.map(({ id, label, cleanPlatePlanned }) => (
        <li key={id}>
          <button type="button" className="button button-bare true-colour-name" onClick={() => select({ kind: 'area', id })}>{capital(label)}</button>
          <TrueColourReading areaId={id} />
          {cleanPlatePlanned && <p className="true-colour-plate">Clean plate planned: {plateLetters(lights)}</p>}
        </li>
      ))}
    </ul>
  )
}
