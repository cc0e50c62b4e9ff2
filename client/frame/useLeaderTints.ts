import { useMemo } from 'react'
import { leaderTints, type Tint } from '../../shared-core/picture/leaderView.ts'
import { useBoard } from '../session/useBoard.ts'

/** Of every light of the look, lifted out or not, by id: what it leads in. The same ones while the gels are. */
export function useLeaderTints(): Readonly<Record<string, Tint>> {
  const gels = useBoard((board) => board.prediction.lights.map(({ id, gel }) => `${id} ${gel.onWhite}`).join('|'))
  return useMemo(() => {
    const lights = gels === '' ? [] : gels.split('|').map((light) => light.split(' ') as [id: string, hex: string])
    const tints = leaderTints(lights.map(([, hex]) => tintOf(hex)))
    return Object.fromEntries(lights.map(([id], i) => [id, tints[i]!]))
  }, [gels])
}

/** @param hex as `#rrggbb` */
function tintOf(hex: string): Tint {
  const channel = (at: number): number => Number.parseInt(hex.slice(at, at + 2), 16)
  return [channel(1), channel(3), channel(5)]
}
