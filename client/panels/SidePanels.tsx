import { useBoard } from '../session/useBoard.ts'
import { AreaSheet } from './AreaSheet.tsx'
import { BackdropSheet } from './backdrop/BackdropSheet.tsx'
import { CameraSheet } from './camera/CameraSheet.tsx'
import { KitSheet } from './kit/KitSheet.tsx'
import { LightSheet } from './light/LightSheet.tsx'
import { PieceSheet } from './PieceSheet.tsx'
import { PointSheet } from './PointSheet.tsx'
import { RoomSheet } from './room/RoomSheet.tsx'
import './SidePanels.css'
import { SubjectSheet } from './subject/SubjectSheet.tsx'

/** Content of the sheet about the selected thing. The sheet itself (its edge, close button, Escape) is the shell's. */
export function SidePanels() {
  const selection = useBoard((board) => board.selection)
  switch (selection?.kind) {
    case undefined:
      return null
    case 'light':
      return <LightSheet key={selection.id} lightId={selection.id} />
    case 'piece':
      return <PieceSheet key={selection.id} pieceId={selection.id} />
    case 'point':
      return <PointSheet key={selection.id} pointId={selection.id} />
    case 'area':
      return <AreaSheet key={selection.id} areaId={selection.id} />
    case 'camera':
      return <CameraSheet />
    case 'subject':
      return <SubjectSheet />
    case 'backdrop':
      return <BackdropSheet />
    case 'room':
      return <RoomSheet />
    case 'kit':
      return <KitSheet />
  }
}
