import { readFileSync } from 'node:fs'
import { encode } from 'fast-png'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture } from '../../shared-core/predict/lookPicture.ts'
import { pictureHeight, pictureText } from '../../shared-core/predict/pictureText.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const SUBJECT_FILE = new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)

/** The Frame of a look as the bytes of a PNG file, drawn without a browser. */
export function framePng(plan: Plan, lookId: string, width: number): Uint8Array {
  const look = plan.looks[lookId]!
  const picture = new LookPicture(decodeSubject(readFileSync(SUBJECT_FILE)))
  const { rgba, height } = picture.draw(plan, lookId, { width, height: pictureHeight(look, width), soloLightId: null, coarse: false })
  return encode({ width, height, data: rgba, channels: 4, depth: 8, text: { ...pictureText(plan, look) } })
}
