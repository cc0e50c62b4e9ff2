import { createPredictor } from '../../shared-core/predict/predict.ts'
import { handOverFiles, type HandOverParts } from '../../shared-core/notebook/handOver/handOver.ts'
import { pictureFile, type SavedPicture } from '../frame/picture/savePictures.ts'

export type HandOverSaid = Pick<HandOverParts, 'plan' | 'lookId' | 'asShot' | 'notes' | 'locks' | 'units'>

/**
 * The whole folder for retouch as one zip: the Frame, each light alone, and the texts. Made in the page, so it needs no network.
 * @param onDone told of each picture as it is drawn
 * @throws Error in words when a picture cannot be drawn
 */
export async function handOverZip(said: HandOverSaid, madeMs: number, onDone: (words: string) => void): Promise<Blob> {
  const { plan, lookId } = said
  const look = plan.looks[lookId]
  if (look === undefined) throw new Error('That look is no longer in the job.')
  const lights = Object.entries(look.lights).filter(([, { on }]) => on).sort(([, a], [, b]) => (a.letter < b.letter ? -1 : 1))
  const pictures: SavedPicture[] = []
  for (const soloLightId of [null, ...lights.map(([id]) => id)]) {
    pictures.push(await pictureFile(plan, lookId, soloLightId))
    onDone(`${pictures.length} of ${lights.length + 1} pictures`)
  }
  const names = ['Frame as intended.png', ...lights.map(([, { letter }]) => `${letter} alone.png`)]
  const files = handOverFiles({ ...said, prediction: createPredictor()(plan, lookId), pictureNames: names, madeMs })
  const { zipSync, strToU8 } = await import('fflate')
  const bytes = await Promise.all(pictures.map(async ({ png }) => new Uint8Array(await png.arrayBuffer())))
  const zip = zipSync(Object.fromEntries([
    ...files.map(({ name, text }) => [name, strToU8(text)] as const),
    // Pictures are compressed already.
    ...names.map((name, i) => [name, [bytes[i]!, { level: 0 as const }]] as const),
  ]))
  return new Blob([new Uint8Array(zip)], { type: 'application/zip' })
}
