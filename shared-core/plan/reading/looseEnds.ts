import { own } from '../edits/lookAt.ts'
import type { Light, Look } from '../schema/look.ts'
import type { Plan } from '../schema/plan.ts'
import { isMetered } from './crossChecks.ts'
import { relettered, reletterings, reletteringWords } from './letters.ts'

type Kit = Pick<Plan, 'heads' | 'modifiers' | 'gels'>

/**
 * Ties what points nowhere: one person took a head out of the kit while another put it on a light. The light stays,
 * on the first head there is, and it is said; without any head or modifier in the kit it is left out. The same object
 * comes back when nothing was loose.
 */
export function tieLooseEnds(kit: Kit, look: Look): { readonly look: Look; readonly repairs: readonly string[] } {
  const repairs: string[] = []
  const tied: [string, Light][] = []
  let changed = false
  for (const [id, light] of Object.entries(look.lights)) {
    const whole = tieLight(kit, look, light, repairs)
    changed ||= whole !== light
    if (whole) tied.push([id, whole])
  }
  const lights = changed ? Object.fromEntries(tied) : look.lights
  const changes = reletterings(lights)
  repairs.push(...reletteringWords(look.name, changes))
  const lettered = relettered(lights, changes)
  return { look: lettered === look.lights ? look : { ...look, lights: lettered }, repairs }
}

function tieLight(kit: Kit, look: Look, light: Light, repairs: string[]): Light | null {
  const name = `Light ${light.letter} of “${look.name}”`
  let whole = light
  if (!own(kit.heads, light.headId)) {
    const [first] = Object.entries(kit.heads)
    if (!first) return leftOut(repairs, `${name} is left out: there is no head in the kit.`)
    repairs.push(`${name}: its head is no longer in the kit. It is shown with “${first[1].name}” until you choose.`)
    whole = { ...whole, headId: first[0] }
  }
  if (!own(kit.modifiers, light.modifierId)) {
    const [first] = Object.entries(kit.modifiers)
    if (!first) return leftOut(repairs, `${name} is left out: there is no modifier in the kit.`)
    repairs.push(`${name}: its modifier is no longer in the kit. It is shown with “${first[1].name}” until you choose.`)
    whole = { ...whole, modifierId: first[0] }
  }
  const gelIds = light.gelIds.filter((id) => own(kit.gels, id) !== undefined)
  if (gelIds.length < light.gelIds.length) {
    repairs.push(`${name}: a gel on it is no longer in the drawer. It is shown without that sheet.`)
    whole = { ...whole, gelIds }
  }
  if (!isMetered(look, light.serves)) {
    repairs.push(`${name}: the point it was metered at is gone. It is metered at the nose.`)
    whole = { ...whole, serves: 'nose' }
  }
  return whole
}

function leftOut(repairs: string[], message: string): null {
  repairs.push(message)
  return null
}
