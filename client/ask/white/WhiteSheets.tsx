import type { SheetBehind } from '../../../shared-core/ask/whiteBehind.ts'
import { capital } from '../../../shared-core/plan/capital.ts'
import { signedStops } from '../../ladder/areaNames.ts'
import { useBoard } from '../../session/useBoard.ts'
import type { Preview } from '../usePreview.ts'

const MOST_SHOWN = 6

/** The drawer's sheets as colours behind: those that can be driven to white, gentlest rim first; those that cannot, folded. */
export function WhiteSheets({ sheets, preview }: { readonly sheets: readonly SheetBehind[]; readonly preview: Preview }) {
  const able = sheets.filter(({ canWhiten }) => canWhiten)
  const unable = sheets.filter(({ canWhiten }) => !canWhiten)
  return (
    <>
      <h4 className="answer-title">White with, gentlest rim first</h4>
      <ul className="answer-rows">
        {able.slice(0, MOST_SHOWN).map((sheet) => <SheetRow key={sheet.gelId ?? ''} sheet={sheet} preview={preview} />)}
      </ul>
      {able.length > MOST_SHOWN && (
        <details className="answer-fold">
          <summary>{able.length - MOST_SHOWN} more, hotter rims</summary>
          <ul className="answer-rows">
            {able.slice(MOST_SHOWN).map((sheet) => <SheetRow key={sheet.gelId ?? ''} sheet={sheet} preview={preview} />)}
          </ul>
        </details>
      )}
      {unable.length > 0 && (
        <details className="answer-fold">
          <summary>{unable.length} cannot be driven to white</summary>
          <p className="answer-words">{unable.map(({ name, stopsShort }) => `${name}${stopsShort ? ` lacks ${stopsShort.toFixed(1)}` : ''}`).join(', ')}</p>
        </details>
      )}
    </>
  )
}

function SheetRow({ sheet, preview }: { readonly sheet: SheetBehind; readonly preview: Preview }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const { name, onWhite, point, edit, sheetsToBuy } = sheet
  const isSeen = preview.seen === name
  const burns = point?.hottestChannelStops ?? null
  return (
    <li className="answer-row" data-seen={isSeen}>
      <button type="button" className="answer-face" aria-pressed={isSeen} disabled={!mayEdit || edit === null} onClick={() => edit && preview.look(name, edit)}>
        <span className="answer-patch" style={{ background: onWhite }} />
        <span className="answer-name">{capital(name)}</span>
        <span className="answer-figure">
          rim <b>{signedStops(point?.wrapStops ?? null)}</b>
        </span>
        <span className="answer-note">
          {burns !== null && burns > 0 ? `burnt by ${burns.toFixed(1)}` : 'no edge burns'}
          {sheetsToBuy > 0 && `, ${sheetsToBuy} to buy`}
        </span>
      </button>
      {isSeen && edit && <button type="button" className="button button-main answer-apply" onClick={() => preview.apply(edit)}>Apply</button>}
    </li>
  )
}
