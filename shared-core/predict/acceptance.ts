import type { Acceptance, Look, Severity } from '../plan/schema/look.ts'
import type { AcceptedSnag, Snag, SnagRule } from './snag.ts'

/** Which way a rule's number gets worse, and by how much until somebody would see or feel it. */
interface Worsening {
  readonly worse: 'higher' | 'lower'
  readonly step: number
}

/** A third of a stop, near enough, is the least that shows (common practice, no source). */
const VISIBLE_STOPS = 0.3
const moreStops: Worsening = { worse: 'higher', step: VISIBLE_STOPS }
const fewerStops: Worsening = { worse: 'lower', step: VISIBLE_STOPS }
const oneMore: Worsening = { worse: 'higher', step: 1 }

/** Steps that are not stops are as coarse as people tape, count and turn on a set (common practice, no source). */
const worsenings: Readonly<Record<SnagRule, Worsening>> = {
  'out-of-power': fewerStops,
  'too-strong': fewerStops,
  'white-out': moreStops,
  'white-too-hot': moreStops,
  'uneven-background': moreStops,
  spill: fewerStops,
  'second-colour': fewerStops,
  'gel-level': moreStops,
  haze: moreStops,
  ambient: moreStops,
  'ambient-colour': fewerStops,
  sync: { worse: 'higher', step: 20 },
  'flash-duration': { worse: 'higher', step: 0.001 },
  aperture: { worse: 'higher', step: 2 },
  'depth-of-field': { worse: 'lower', step: 0.01 },
  'fall-off': moreStops,
  'outside-room': { worse: 'higher', step: 0.05 },
  'in-frame': oneMore,
  'lens-sees-light': moreStops,
  'front-not-filling': oneMore,
  'backdrop-not-filling': oneMore,
  'head-near-face': { worse: 'lower', step: 0.05 },
  'channel-clips': moreStops,
  'gel-heat': moreStops,
  'kit-short': { worse: 'lower', step: 1 },
  'key-distance': { worse: 'higher', step: 0.2 },
  'key-too-near': { worse: 'lower', step: 0.1 },
  'paper-distance': { worse: 'lower', step: 0.1 },
  'gel-cut': { worse: 'higher', step: 0.05 },
  'same-name-gel': oneMore,
  'head-colour': { worse: 'higher', step: 100 },
  'circuit-load': { worse: 'higher', step: 5 },
  battery: { worse: 'higher', step: 10 },
  sandbag: { worse: 'higher', step: 0.2 },
  walkway: { worse: 'lower', step: 0.1 },
  'safety-cable': { worse: 'lower', step: 0.1 },
  'must-read-true': moreStops,
  'set-up-order': oneMore,
  'white-balance': oneMore,
  catchlights: oneMore,
  'opposite-hues': fewerStops,
}

const loudness: Readonly<Record<Severity, number>> = { stop: 0, look: 1, note: 2 }

/** Rounding of a number that came back to where it was. */
const SAME = 1e-9

/** How far past its threshold a snag is, in steps that show. */
function excessSteps({ rule, value, threshold }: Snag): number {
  const { worse, step } = worsenings[rule]
  return (worse === 'higher' ? value - threshold : threshold - value) / step
}

/** Loudest first, and within one loudness the worst first. */
export function loudestFirst(a: Snag, b: Snag): number {
  return loudness[a.severity] - loudness[b.severity] || excessSteps(b) - excessSteps(a)
}

/** Whether a snag is still what was accepted: no louder, and not worse by a step that shows. */
export function isStillAccepted(snag: Snag, acceptance: Acceptance): boolean {
  if (loudness[snag.severity] < loudness[acceptance.severity]) return false
  const { worse, step } = worsenings[snag.rule]
  const grown = worse === 'higher' ? snag.value - acceptance.value : acceptance.value - snag.value
  return grown < step - SAME
}

/** Parts the snags that still speak from those somebody wants so. */
export function partAccepted(snags: readonly Snag[], look: Look): { snags: Snag[]; accepted: AcceptedSnag[] } {
  const speaking: Snag[] = []
  const accepted: AcceptedSnag[] = []
  for (const snag of snags) {
    const acceptance = Object.hasOwn(look.accepted, snag.key) ? look.accepted[snag.key] : undefined
    if (acceptance && isStillAccepted(snag, acceptance)) accepted.push({ ...snag, acceptance })
    else speaking.push(snag)
  }
  return { snags: speaking, accepted }
}
