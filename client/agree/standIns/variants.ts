import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { planOnSkin, standIns } from '../../../shared-core/predict/standIns.ts'

/** One picture of the stand-ins: the look with another person in it, light and camera unchanged. */
export interface Variant {
  readonly key: string
  /** "deep, dewy" */
  readonly words: string
  readonly plan: Plan
  /** Key of the picture beside which its words are said. */
  readonly against: string
  /** Only the skin's sheen differs from that one. */
  readonly isSheen: boolean
}

/** Sheen of powdered and of dewy skin, 0-1, and two hairs well apart. Common practice, no source. */
const MATT = 0.1
const DEWY = 0.8
const DARK_HAIR = '#1e1814'
const LIGHT_HAIR = '#c8aa78'

/**
 * The row of the cast's own tone first, then five skins matt and dewy, and the cast in dark and light hair. Two rows of the
 * same length: what stands under another differs from it by sheen, or by hair.
 */
export function variantsOf(plan: Plan, lookId: string): { readonly upper: readonly Variant[]; readonly lower: readonly Variant[] } {
  const subject = plan.looks[lookId]?.subject
  if (!subject) return { upper: [], lower: [] }
  const isDewy = subject.skinSheen > (MATT + DEWY) / 2
  const own = (key: string, words: string, change: Partial<Subject>, isSheen = false): Variant =>
    ({ key, words, plan: withSubject(plan, lookId, change), against: 'own', isSheen })
  const skins = (sheen: number, word: 'matt' | 'dewy'): Variant[] => standIns.map((standIn, i) => ({
    key: `${word}-${i}`, words: `${standIn.words}, ${word}`, isSheen: word === 'dewy',
    plan: withSubject(planOnSkin(plan, lookId, standIn), lookId, { skinSheen: sheen }),
    against: word === 'dewy' ? `matt-${i}` : 'own',
  }))
  const otherSheen = own('own-sheen', isDewy ? 'own tone, matt' : 'own tone, dewy', { skinSheen: isDewy ? MATT : DEWY }, !isDewy)
  return {
    upper: [own('own', 'the cast as planned', {}), ...skins(MATT, 'matt'), own('dark-hair', 'own tone, dark hair', { hair: DARK_HAIR })],
    lower: [otherSheen, ...skins(DEWY, 'dewy'), own('light-hair', 'own tone, light hair', { hair: LIGHT_HAIR })],
  }
}

function withSubject(plan: Plan, lookId: string, change: Partial<Subject>): Plan {
  const look = plan.looks[lookId]!
  return { ...plan, looks: { ...plan.looks, [lookId]: { ...look, subject: { ...look.subject, ...change } } } }
}
