import { formatLength } from '../../shared-core/plan/entry/length.ts'
import { useBoard } from '../session/useBoard.ts'
import { BigNumber, StandStep } from './StandSections.tsx'

/** The first thing on the floor: the T, the camera, the backdrop. */
export function MarksCard() {
  const units = useBoard((board) => board.units)
  const room = useBoard((board) => board.plan.room)
  const look = useBoard((board) => board.plan.looks[board.lookId])
  const cautions = useBoard((board) => board.prediction.cautions)
  if (look === undefined) return null
  const { camera, subject, backdrop } = look
  const length = (metres: number) => formatLength(metres, units)
  const side = (metres: number) => (Math.abs(metres) < 0.005 ? '' : `, ${length(Math.abs(metres))} to camera ${metres > 0 ? 'right' : 'left'}`)
  return (
    <div className="rig-card">
      <StandStep title="The T: where the subject stands">
        <BigNumber value={length(room.markFromLeftWallMetres + subject.xMetres)} words="from the camera-left wall" />
        <BigNumber value={length(room.markFromRearWallMetres - subject.yMetres)} words="from the rear wall" />
      </StandStep>
      <StandStep title="Camera">
        <BigNumber value={length(subject.yMetres - camera.place.yMetres)} words={`from the T, towards the camera's end${side(camera.place.xMetres - subject.xMetres)}`} />
        <BigNumber value={length(camera.place.zMetres)} words="height of the lens" />
        <p className="rig-words">{Math.round(camera.focalLengthMillimetres)} mm lens. Tape the lens's place on the floor: it is a mark that others are measured from.</p>
      </StandStep>
      {backdrop.kind === 'paper' && (
        <StandStep title="Paper">
          <BigNumber value={length(backdrop.yMetres - subject.yMetres)} words={`behind the T${side(backdrop.centreXMetres - subject.xMetres)}`} />
          <BigNumber value={length(backdrop.topMetres)} words="to its top" />
        </StandStep>
      )}
      <StandStep title="Before anything is plugged in" cautions={cautions} kinds={['circuit', 'capacitor', 'photosensitive']}>
        <p className="rig-words">Ways out stay clear; cables along walls, taped where people walk.</p>
      </StandStep>
    </div>
  )
}
