import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { formatSize } from '../../shared-core/plan/entry/size.ts'
import type { PieceStand } from '../../shared-core/stands/stand.ts'
import { facingWords } from '../../shared-core/stands/standWords.ts'
import { useBoard } from '../session/useBoard.ts'
import { BigNumber, StandStep, TapeNumbers } from './StandSections.tsx'

/** A flag, flat, board or scrim: where it stands, how high, which way it faces. */
export function PieceCard({ stand: { piece, taped, heightMetres, cautions } }: { readonly stand: PieceStand }) {
  const units = useBoard((board) => board.units)
  const isFlat = piece.kind === 'v-flat'
  return (
    <div className="rig-card">
      <StandStep title={isFlat ? 'Place' : 'Stand'} cautions={cautions} kinds={['tall-stand', 'boom', 'large-modifier']}>
        <TapeNumbers taped={taped} what={isFlat ? 'the hinge' : 'its middle'} />
        {!isFlat && <BigNumber value={formatLength(heightMetres, units)} words="floor to its centre" />}
        <p className="rig-words">{facingWords(piece.facingDegrees, piece.tiltDegrees)}</p>
        {isFlat && <p className="rig-words">Opened to {Math.round(piece.openDegrees)}°.</p>}
      </StandStep>
      <StandStep title="What it is">
        <p className="rig-say">{formatSize(piece.widthMetres, piece.heightMetres, units)}</p>
        <p className="rig-words">
          {piece.kind === 'scrim' ? `Lets ${Math.round(100 * piece.transmittance)} % through.` : 'A tall or top-heavy stand wants a sandbag; nothing over people without its safety cable.'}
        </p>
      </StandStep>
    </div>
  )
}
