import type { Look } from '../plan/schema/look.ts'
import { namedAreas } from '../plan/schema/look.ts'
import { areaLabels } from '../predict/areaLabels.ts'
import type { AreaId } from '../predict/prediction.ts'

/** What people say for an area beside its label. Left and right are the camera's. */
const otherNames: Readonly<Record<string, readonly string[]>> = {
  nose: ['face'],
  lips: ['lip', 'mouth', 'lipstick'],
  breastbone: ['chest', 'breast bone', 'sternum'],
  'background-centre': ['paper', 'background', 'backdrop', 'behind', 'wall', 'paper centre', 'background center', 'paper center'],
  'background-top-left': ['paper top left', 'top left'],
  'background-top-right': ['paper top right', 'top right'],
  'background-bottom-left': ['paper bottom left', 'bottom left'],
  'background-bottom-right': ['paper bottom right', 'bottom right'],
}

/** Every name by which an area of this look can be called, in lower case and single spaces, with its area. */
export function namesOfAreas(look: Look): ReadonlyMap<string, AreaId> {
  const names = new Map<string, AreaId>()
  for (const id of namedAreas) {
    for (const name of [areaLabels[id], ...sidesOf(areaLabels[id]), ...(otherNames[id] ?? [])]) names.set(plainName(name), id)
  }
  for (const [id, { label }] of Object.entries(look.points)) names.set(plainName(label), id)
  return names
}

/** "camera-right jaw" is also "jaw right", "right jaw" and "jaw camera right". */
function sidesOf(label: string): string[] {
  const sided = /^camera-(left|right) (.+)$/.exec(label)
  if (!sided) return []
  const [, side, part] = sided
  return [`${side} ${part}`, `${part} ${side}`, `${part} camera ${side}`, `cam ${side} ${part}`, `c${side![0]} ${part}`]
}

/** Names are compared without hyphens, capitals or doubled spaces. */
export function plainName(text: string): string {
  return text.toLowerCase().replace(/[-–—_]/g, ' ').replace(/\s+/g, ' ').trim()
}
