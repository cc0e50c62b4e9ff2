import { Copy, Trash2 } from 'lucide-react'
import { changePiece, duplicatePiece, movePiece, removePiece } from '../../shared-core/plan/edits/pieces.ts'
import type { Piece } from '../../shared-core/plan/schema/look.ts'
import { MayDrift } from '../ask/drift/MayDrift.tsx'
import { TextField } from '../controls/TextField.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePlanEdit, type MakeEdit } from '../session/usePlanEdit.ts'
import { CareHere, SnagsHere } from './AboutThis.tsx'
import { LengthField, PlanSwatch, QuantityField } from './planFields.tsx'
import { PanelHead } from './PanelHead.tsx'
import { PlaceFields } from './PlaceFields.tsx'
import { angleQuantity, percentQuantity } from './quantities.ts'
import { clothSwatches } from './usualSwatches.ts'

const kindWords: Readonly<Record<Piece['kind'], string>> = {
  flag: 'Takes light away',
  'v-flat': 'Two panels on a hinge: takes light away, or throws it back',
  board: 'Throws light back in its own colour',
  scrim: 'Lets part of the light through, spread wide',
}

/** Everything about a flag, a V-flat, a board or a scrim. */
export function PieceSheet({ pieceId }: { readonly pieceId: string }) {
  const piece = useBoard((board) => board.shown.looks[board.lookId]?.pieces[pieceId])
  const mayEdit = useBoard((board) => board.mayEdit)
  const select = useBoard((board) => board.select)
  const edit = usePlanEdit()
  if (!piece) return null
  const change = (patch: Parameters<typeof changePiece>[3]): MakeEdit => (plan, lookId) => changePiece(plan, lookId, pieceId, patch)

  function duplicate(): void {
    let copyId: string | null = null
    const written = edit((plan, lookId) => {
      const made = duplicatePiece(plan, lookId, pieceId)
      if (made.ok) copyId = made.pieceId
      return made
    })
    if (written && copyId !== null) select({ kind: 'piece', id: copyId })
  }

  return (
    <div className="panel">
      <PanelHead title={piece.label} gist={kindWords[piece.kind]}>
        <button type="button" className="button" onClick={duplicate}>
          <Copy size={15} aria-hidden /> Duplicate
        </button>
        <button type="button" className="button" onClick={() => edit((plan, lookId) => removePiece(plan, lookId, pieceId)) && select(null)}>
          <Trash2 size={15} aria-hidden /> Remove
        </button>
      </PanelHead>
      <SnagsHere id={pieceId} />
      <MayDrift thing="piece" id={pieceId} />
      <CareHere id={pieceId} />
      <div className="panel-grid panel-first">
        <TextField label="Name" value={piece.label} maxLength={120} disabled={!mayEdit} onDone={(label) => edit(change({ label }))} />
        <LengthField label={piece.kind === 'v-flat' ? 'Width of a panel' : 'Width'} value={piece.widthMetres} change={(widthMetres) => change({ widthMetres })} />
        <LengthField label="Height" value={piece.heightMetres} change={(heightMetres) => change({ heightMetres })} />
        <QuantityField label="Faces, 0 to the camera" value={piece.facingDegrees} quantity={angleQuantity} change={(facingDegrees) => change({ facingDegrees })} />
        {piece.kind === 'v-flat' ? (
          <QuantityField label="Open between its panels" value={piece.openDegrees} quantity={angleQuantity} change={(openDegrees) => change({ openDegrees })} />
        ) : (
          <QuantityField label="Tipped up" value={piece.tiltDegrees} quantity={angleQuantity} change={(tiltDegrees) => change({ tiltDegrees })} />
        )}
        {piece.kind === 'scrim' && (
          <QuantityField label="Lets through" value={piece.transmittance} quantity={percentQuantity} change={(transmittance) => change({ transmittance })} />
        )}
      </div>
      <PlaceFields
        title={piece.kind === 'v-flat' ? 'Middle of the hinge' : 'Centre'}
        place={piece.place}
        change={(place) => (plan, lookId) => movePiece(plan, lookId, pieceId, place)}
      />
      <div className="panel-grid panel-swatches">
        <PlanSwatch label="Front" value={piece.front} usual={clothSwatches} change={(front) => change({ front })} />
        <PlanSwatch label="Back" value={piece.back} usual={clothSwatches} change={(back) => change({ back })} />
      </div>
    </div>
  )
}
