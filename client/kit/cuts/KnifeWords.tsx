import type { LaidSheet } from '../../../shared-core/kit/cutLayout.ts'
import { useBoard } from '../../session/useBoard.ts'
import { lengthText } from './sizeText.ts'

/** The same order of the knife in words: for who cannot see the drawing, and for who reads it out. */
export function KnifeWords({ sheet }: { readonly sheet: LaidSheet }) {
  const units = useBoard((board) => board.units)
  return (
    <details className="knife-words">
      <summary>The knife in words</summary>
      <ol>
        {sheet.lines.map((line) => (
          <li key={`${line.x1} ${line.y1} ${line.x2} ${line.y2}`}>
            {line.x1 === line.x2
              ? `Downwards, ${lengthText(line.x1, units)} from the left, from ${lengthText(line.y1, units)} to ${lengthText(line.y2, units)}`
              : `Across, ${lengthText(line.y1, units)} from the top, from ${lengthText(line.x1, units)} to ${lengthText(line.x2, units)}`}
          </li>
        ))}
      </ol>
    </details>
  )
}
