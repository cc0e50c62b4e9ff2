import { createPredictor } from '../../shared-core/predict/predict.ts'
import { handOverFiles, type HandOverParts } from '../../shared-core/notebook/handOver/handOver.ts'
import { standsOf } from '../../shared-core/stands/stand.ts'
import { pictureFile, type SavedPicture } from '../frame/picture/savePictures.ts'
import { fetchPhotographs, type PhotoToHand } from './wrapPhotos.ts'

export interface HandOverSaid extends Pick<HandOverParts, 'plan' | 'lookId' | 'asShot' | 'notes' | 'locks' | 'units'> {
  readonly photos: readonly PhotoToHand[]
}

export interface HandOverFolder {
  readonly zip: Blob
  /** Photographs that could not be had; the folder names each. */
  readonly missingPhotographs: number
}

/**
 * What writes zip and picture files, fetched ahead so that the folder can be made when there is no network any more.
 * @throws Error in words where it is neither to be fetched nor kept on this device
 */
export async function fetchWriters() {
  try {
    const [zip] = await Promise.all([import('fflate'), import('fast-png')])
    return zip
  } catch {
    throw new Error('What makes the folder is not on this device yet, and there is no network to fetch it. Open this page once with a network.')
  }
}

/**
 * The whole folder for retouch as one zip: the Frame, each light alone, the photographs of the stands, and the texts. Made in
 * the page; only photographs that other devices took need the network.
 * @param onDone told of each picture as it is drawn
 * @throws Error in words when a picture cannot be drawn
 */
export async function handOverZip({ photos, ...said }: HandOverSaid, madeMs: number, onDone: (words: string) => void): Promise<HandOverFolder> {
  const { plan, lookId } = said
  const look = plan.looks[lookId]
  if (look === undefined) throw new Error('That look is no longer in the job.')
  const { zipSync, strToU8 } = await fetchWriters()
  const lights = Object.entries(look.lights).filter(([, { on }]) => on).sort(([, a], [, b]) => (a.letter < b.letter ? -1 : 1))
  const pictures: SavedPicture[] = []
  for (const soloLightId of [null, ...lights.map(([id]) => id)]) {
    pictures.push(await pictureFile(plan, lookId, soloLightId))
    onDone(`${pictures.length} of ${lights.length + 1} pictures`)
  }
  const names = ['Frame as intended.png', ...lights.map(([, { letter }]) => `${letter} alone.png`)]
  const prediction = createPredictor()(plan, lookId)
  if (photos.length > 0) onDone('Fetching the photographs')
  const photographs = await fetchPhotographs(photos, new Map(standsOf(plan, lookId, prediction).map(({ id, name }) => [id, name])))
  const files = handOverFiles({ ...said, prediction, pictureNames: names, photographs, madeMs })
  const bytes = await Promise.all(pictures.map(async ({ png }) => new Uint8Array(await png.arrayBuffer())))
  // Pictures are compressed already.
  const stored = { level: 0 } as const
  const zip = zipSync(Object.fromEntries([
    ...files.map(({ name, text }) => [name, strToU8(text)] as const),
    ...names.map((name, i) => [name, [bytes[i]!, stored]] as const),
    ...photographs.flatMap(({ name, bytes: photograph }) => (photograph === null ? [] : [[name, [photograph, stored]] as const])),
  ]))
  return { zip: new Blob([new Uint8Array(zip)], { type: 'application/zip' }), missingPhotographs: photographs.filter(({ missing }) => missing !== null).length }
}
