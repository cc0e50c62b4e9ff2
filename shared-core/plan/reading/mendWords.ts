import { capital } from '../capital.ts'
import { wordsOfKey } from '../edits/changing.ts'
import { lookIn, own } from '../edits/lookAt.ts'
import type { Plan } from '../schema/plan.ts'
import { printable } from './problem.ts'
import type { Mend } from './salvageBranch.ts'

/** A mend as a sentence for the people on the job, naming things as they know them. */
export function mendWords(plan: Plan, { path, what }: Mend): string {
  if (what === 'left-out') return leftOutWords(plan, path)
  const { thing, rest } = named(plan, path)
  // From the leaf outwards: "f number of the camera of “Dusk”".
  const leaf = rest.map((key) => wordsOfKey(printable(key))).reverse().join(' of the ')
  const place = leaf === '' ? thing : `the ${leaf} of ${thing}`
  switch (what) {
    case 'bounded':
      return `${capital(place)} was out of range and is shown at the nearest allowed value.`
    case 'usual':
      return `${capital(place)} could not be read and is shown at its usual value.`
    case 'too-many':
      return `There are more ${leaf || 'things'} in ${thing} than a job can hold; the rest is left out.`
    case 'unknown':
      return `${capital(place)} holds something this version does not know; it is left out.`
  }
}

/** What is left out has no name any more; its record and where that stands say enough. */
function leftOutWords(plan: Plan, path: readonly string[]): string {
  const record = path[path.length - 2] ?? ''
  const { thing } = named(plan, path.slice(0, -2))
  return `One of the ${wordsOfKey(record)} of ${thing} could not be read and is left out.`
}

const kitWords: Readonly<Record<string, string>> = { heads: 'head', modifiers: 'modifier', gels: 'gel' }
const lookWords: Readonly<Record<string, string>> = { lights: 'light', pieces: 'piece', points: 'point' }

function named(plan: Plan, path: readonly string[]): { readonly thing: string; readonly rest: readonly string[] } {
  const [branch = '', id = '', below = '', belowId = ''] = path
  const look = branch === 'looks' ? lookIn(plan, id) : undefined
  if (look) {
    const label = own(look.lights, belowId)?.letter ?? own(look.pieces, belowId)?.label ?? own(look.points, belowId)?.label
    const word = lookWords[below]
    return word && label !== undefined
      ? { thing: `${word} ${label} of “${look.name}”`, rest: path.slice(4) }
      : { thing: `“${look.name}”`, rest: path.slice(2, 4) }
  }
  const kitWord = kitWords[branch]
  if (kitWord) {
    const name = (own(plan.heads, id) ?? own(plan.modifiers, id) ?? own(plan.gels, id))?.name
    return name === undefined
      ? { thing: 'the kit', rest: path.slice(0, 1) }
      : { thing: `${kitWord} “${name}”`, rest: path.slice(2) }
  }
  if (branch === 'room') return { thing: 'the room', rest: path.slice(1) }
  return { thing: 'the job', rest: path.slice(0, 1) }
}
