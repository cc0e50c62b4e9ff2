import { nextLetter } from '../letters.ts'
import type { Look } from '../schema/look.ts'

export interface Relettering {
  readonly lightId: string
  readonly from: string
  readonly to: string
}

/**
 * Two people who add a light at the same moment both get the next letter. The light set up first keeps it (the lower
 * id, if they tie), and the other takes the next free one: every device comes to the same answer by itself.
 */
export function reletterings(lights: Look['lights']): Relettering[] {
  const inOrder = Object.entries(lights).sort(
    ([idA, a], [idB, b]) => a.setUpOrder - b.setUpOrder || (idA < idB ? -1 : 1),
  )
  const kept = new Map<string, string>()
  for (const [id, light] of inOrder) {
    if (!kept.has(light.letter)) kept.set(light.letter, id)
  }
  const taken = new Set(kept.keys())
  const changes: Relettering[] = []
  for (const [lightId, light] of inOrder) {
    if (kept.get(light.letter) === lightId) continue
    const to = nextLetter(taken)
    taken.add(to)
    changes.push({ lightId, from: light.letter, to })
  }
  return changes
}

/** Each new letter as a sentence for the people on the job. */
export function reletteringWords(lookName: string, changes: readonly Relettering[]): string[] {
  return changes.map(({ from, to }) => `Two lights of “${lookName}” were lettered ${from}: one is now ${to}.`)
}

/** The lights with their new letters; the same object when nothing clashes. */
export function relettered(lights: Look['lights'], changes: readonly Relettering[]): Look['lights'] {
  if (changes.length === 0) return lights
  const letterOf = new Map(changes.map(({ lightId, to }) => [lightId, to]))
  return Object.fromEntries(
    Object.entries(lights).map(([id, light]) => [id, { ...light, letter: letterOf.get(id) ?? light.letter }]),
  )
}
