import { useId, type CSSProperties } from 'react'
import type { LaidCut, LaidSheet } from '../../../shared-core/kit/cutLayout.ts'
import { formatSize } from '../../../shared-core/plan/entry/size.ts'
import { useBoard } from '../../session/useBoard.ts'
import { CutDone } from './CutDone.tsx'
import { HatchPattern } from './GelPattern.tsx'
import { KnifeWords } from './KnifeWords.tsx'
import { sizeText } from './sizeText.ts'

interface SheetDrawingProps {
  readonly sheet: LaidSheet
  readonly number: number
  readonly colour: string
  readonly gelId: string
  readonly index: number
}

/** One sheet seen from above, sheets to one scale and rolls to another; of a roll, as much as is cut off. */
export function SheetDrawing({ sheet, number, colour, gelId, index }: SheetDrawingProps) {
  const units = useBoard((board) => board.units)
  const patternId = useId()
  const { stock, cuts, offcuts, usedHeight } = sheet
  const name = `${stock.isRoll ? 'Roll' : 'Sheet'} ${number}`
  const state = [
    stock.isOwned ? '' : 'to buy', stock.batch === '' ? '' : `batch ${stock.batch}`, stock.hoursUsed > 0 ? `${stock.hoursUsed} h used` : '',
    stock.isRoll ? `${sizeText(stock.width, usedHeight, units)} off it` : sizeText(stock.width, stock.height, units),
  ].filter((words) => words !== '').join(' · ')
  // A roll's rest is not drawn: it is many times as long.
  const inside = offcuts.filter(({ y }) => y < usedHeight)
  return (
    <li className="cut-sheet">
      <svg
        role="img" className="cut-drawing" data-roll={stock.isRoll} viewBox={`-3 -3 ${stock.width + 6} ${usedHeight + 6}`}
        style={{ '--wide': stock.width } as CSSProperties}
        aria-label={`${name}, ${state}: ${cuts.map((cut) => `${marksOf(cut)}, ${sizeText(cut.width, cut.height, units)}`).join('; ')}`}
      >
        <defs>
          <HatchPattern id={patternId} index={index} colour={colour} />
        </defs>
        {inside.map((rest) => (
          <g key={`${rest.x} ${rest.y}`}>
            <rect className="cut-rest" x={rest.x} y={rest.y} width={rest.width} height={rest.height} />
            {rest.width >= 200 && rest.height >= 120 && (
              <text className="cut-rest-words" x={rest.x + rest.width / 2} y={rest.y + rest.height / 2}>{sizeText(rest.width, rest.height, units)}</text>
            )}
          </g>
        ))}
        {cuts.map((cut) => <CutShape key={`${cut.cut.id} ${cut.piece}`} cut={cut} fill={`url(#${patternId})`} size={sizeText(cut.width, cut.height, units)} />)}
        <rect className="cut-stock" width={stock.width} height={usedHeight} />
        {sheet.lines.map((line, at) => (
          <g key={`${line.x1} ${line.y1} ${line.x2} ${line.y2}`}>
            <line className="cut-line" x1={line.x1} y1={line.y1} x2={line.x2} y2={line.y2} />
            <KnifeMark line={line} number={at + 1} />
          </g>
        ))}
      </svg>
      <p><b>{name}</b> <span className="page-soft">{state}</span></p>
      {offcuts.length > 0 && (
        <p className="page-soft">Left: {offcuts.map(({ width, height }) => formatSize(width / 1_000, height / 1_000, units)).join(', ')}</p>
      )}
      <KnifeWords sheet={sheet} />
      <CutDone sheet={sheet} gelId={gelId} name={name} />
    </li>
  )
}

function CutShape({ cut, fill, size }: { readonly cut: LaidCut; readonly fill: string; readonly size: string }) {
  const [middleX, middleY] = [cut.x + cut.width / 2, cut.y + cut.height / 2]
  const marks = marksOf(cut)
  return (
    <g>
      <rect className="cut-piece" x={cut.x} y={cut.y} width={cut.width} height={cut.height} fill={fill} />
      {cut.pieces > 1 && <rect className="cut-joined" x={cut.x + 10} y={cut.y + 10} width={cut.width - 20} height={cut.height - 20} />}
      {/* On a strip of tape, as it is written on the cut itself. */}
      <rect className="cut-tape" x={cut.x} y={middleY} width={cut.width} />
      <text className="cut-letter" x={middleX} y={middleY}>{marks}</text>
      <text className="cut-size" x={middleX} y={middleY}>{size}</text>
    </g>
  )
}

/** The number sits on the line, a little in from where the knife goes in. */
function KnifeMark({ line, number }: { readonly line: LaidSheet['lines'][number]; readonly number: number }) {
  const upright = line.x1 === line.x2
  const [x, y] = upright ? [line.x1, line.y1 + 26] : [line.x1 + 26, line.y1]
  return (
    <>
      <circle className="cut-mark" cx={x} cy={y} />
      <text className="cut-mark-words" x={x} y={y}>{number}</text>
    </>
  )
}

function marksOf({ cut, piece, pieces }: LaidCut): string {
  const letters = cut.isSpare ? `spare ${cut.letters}` : cut.letters
  return pieces > 1 ? `${letters} ${piece}/${pieces}` : letters
}
