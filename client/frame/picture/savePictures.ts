import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { pictureHeight, pictureText } from '../../../shared-core/predict/pictureText.ts'
import { pictureDesk } from './pictureDesk.ts'
import type { DrawnPicture } from './pictureOrders.ts'

/** Large enough to print small or to lie beside a test frame. */
const SAVED_WIDTH = 1_000

export interface SavedPicture {
  readonly fileName: string
  readonly png: Blob
}

/**
 * A look's Frame, or one light alone, as a PNG file with plan, look and settings written in it.
 * @throws Error in words when no picture can be drawn here.
 */
export async function pictureFile(plan: Plan, lookId: string, soloLightId: string | null): Promise<SavedPicture> {
  const look = plan.looks[lookId]
  const desk = pictureDesk()
  if (look === undefined || desk === null) throw new Error('This browser cannot draw the picture.')
  const drawn = await new Promise<DrawnPicture>((resolve) => {
    desk.order({
      slot: `save ${soloLightId ?? 'frame'}`, kind: 'saved', plan, lookId, width: SAVED_WIDTH, height: pictureHeight(look, SAVED_WIDTH),
      soloLightId, coarse: false, view: 'picture', space: 'srgb',
    }, resolve)
  })
  if (drawn.rgba === null) throw new Error(drawn.trouble)
  // Only who saves a picture needs the encoder.
  const { encode } = await import('fast-png')
  const { rgba, width, height } = drawn
  const letter = soloLightId === null ? '' : ` ${look.lights[soloLightId]?.letter ?? ''} alone`
  const png = encode({ width, height, data: rgba, channels: 4, depth: 8, text: { ...pictureText(plan, look) } })
  return { fileName: `${plainName(`${plan.title}, ${look.name}`)}${letter}.png`, png: new Blob([new Uint8Array(png)], { type: 'image/png' }) }
}

/** Without the characters that file systems refuse. */
function plainName(text: string): string {
  return text.replaceAll(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replaceAll(/\s+/g, ' ').trim().slice(0, 100) || 'picture'
}
