import { useMemo } from 'react'
import { useBoard } from '../session/useBoard.ts'
import type { GelViewing } from './gelEffect.ts'

/** The flash of a light, or of the first head in the kit. */
const USUAL_FLASH_KELVIN = 5_600

/** How the drawer's sheets are looked at: through this light's flash, the look's white balance, on its skin. */
export function useGelViewing(lightId: string | null): GelViewing {
  const flashKelvin = useBoard((board) => board.prediction.lights.find(({ id }) => id === lightId)?.colourTemperatureKelvin ?? USUAL_FLASH_KELVIN)
  const whiteBalanceKelvin = useBoard((board) => board.prediction.taking.whiteBalanceKelvin)
  const itaDegrees = useBoard((board) => board.shown.looks[board.lookId]?.subject.skinItaDegrees ?? 30)
  const undertone = useBoard((board) => board.shown.looks[board.lookId]?.subject.skinUndertone ?? 0)
  return useMemo(
    () => ({ flashKelvin, whiteBalanceKelvin, skin: { itaDegrees, undertone } }),
    [flashKelvin, whiteBalanceKelvin, itaDegrees, undertone],
  )
}
