import { readFileSync } from 'node:fs'
import { encode } from 'fast-png'
import type { Plan } from '../../shared-core/plan/schema/plan.ts'
import { LookPicture, type Picture } from '../../shared-core/predict/lookPicture.ts'
import { pictureHeight, pictureText } from '../../shared-core/predict/pictureText.ts'
import { decodeSubject } from '../../shared-core/subject/asset/decode.ts'

const SUBJECT_FILE = new URL('../../shared-core/subject/asset/subject.bin', import.meta.url)

/** Draws looks with the subject as it ships. */
export function newLookPicture(): LookPicture {
  return new LookPicture(decodeSubject(readFileSync(SUBJECT_FILE)))
}

/** The Frame of a look as the bytes of a PNG file, drawn without a browser. */
export function framePng(plan: Plan, lookId: string, width: number): Uint8Array {
  const height = pictureHeight(plan.looks[lookId]!, width)
  return pngOf(newLookPicture().draw(plan, lookId, { width, height, soloLightId: null, coarse: false }), plan, lookId)
}

/** A drawn picture as a PNG file that says what it is. */
export function pngOf({ rgba, width, height }: Picture, plan: Plan, lookId: string): Uint8Array {
  return encode({ width, height, data: rgba, channels: 4, depth: 8, text: { ...pictureText(plan, plan.looks[lookId]!) } })
}
