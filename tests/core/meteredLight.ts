import type { LightAtPoint } from '../../shared-core/transport/lightAtPoint.ts'
import type { Receiver } from '../../shared-core/transport/receipt.ts'

/** Two plain modifiers, and what a meter reads at a place: for checks of light in the set. */

export const softbox = { kind: 'softbox', widthMetres: 1.2, heightMetres: 0.9, depthMetres: 0.4, diffusers: 2 } as const
export const bareTube = { kind: 'bare-tube', widthMetres: 0.08, heightMetres: 0.08, depthMetres: 0.1, diffusers: 0 } as const
export const receiverAt = (place: Receiver['place'], facing: Receiver['facing'], surfaceId: string | null = null): Receiver =>
  ({ place, facing, surfaceId })

/** Flat reading of what came by surfaces, or by one of them. */
export const bounced = (found: LightAtPoint, id?: string) => found.viaSurfaces
  .filter(({ surfaceId }) => id === undefined || surfaceId === id).reduce((sum, { receipt }) => sum + receipt.flat, 0)
