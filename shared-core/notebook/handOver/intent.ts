import type { Look } from '../../plan/schema/look.ts'
import type { Plan } from '../../plan/schema/plan.ts'
import { seenHueWords } from '../../predict/plainWords.ts'
import type { AreaPrediction, LightPrediction, Prediction } from '../../predict/prediction.ts'

/** Common practice, no source: from this share of a place's light on its colour is seen there, and from half it owns the place. */
const SEEN_SHARE = 0.15
const OWN_SHARE = 0.5

/**
 * What is the look and what is a fault, place by place: for somebody who has the files alone, weeks later. From what the
 * background is meant as, whose light each place has, what must read true, and what was accepted.
 */
export function intentText(plan: Plan, lookId: string, prediction: Prediction): string {
  const look = plan.looks[lookId]!
  return [
    `What is meant in “${look.name}”`,
    '',
    'THE LOOK is wanted: leave it. A FAULT is not: mend it.',
    '',
    ...backgroundLines(look, prediction),
    '',
    ...placeLines(prediction),
    '',
    ...trueLines(look, prediction),
    ...acceptedLines(prediction),
    ...warnedLines(prediction),
  ].join('\n')
}

function backgroundLines({ backdrop }: Look, { lights, background, areas }: Prediction): string[] {
  const gelled = lights.filter(({ plane, gel, on }) => on && plane === 'background' && !gel.clear)
  const colour = [...new Set(gelled.map(({ gel }) => gel.name.toLowerCase()))].join(' and ')
  const seen = areas.find(({ id }) => id === 'background-centre')
  switch (backdrop.intent) {
    case 'clean-white': return [
      `Background: pure white, into every corner. ${capital(colour === '' ? 'a' : `a ${colour}`)} cast or a grey corner is a FAULT.`,
      background.verdictAfterFinish === 'white' ? 'As planned it is white in camera or after the finish below.' : `As planned it needs help at the worst corner: see the recipe. What is left there: ${worstCast(background.spots)}.`,
      `${colour === '' ? 'The light' : capital(colour)} that wraps round jaw, neck and arms from behind is THE LOOK.`,
    ]
    case 'even-colour': return [`Background: one even colour, ${seenWords(seen)}. A patch, a step or a brighter middle is a FAULT.`]
    case 'glow': return [
      `Background: a glow${colour === '' ? '' : ` in ${colour}`}, brightest behind the subject and darker towards the edges. The fall-off is THE LOOK: do not even it out.`,
      'A second colour in the glow, or a hard edge, is a FAULT.',
    ]
    case 'free': return [`Background: as it was lit, ${seenWords(seen)}. It was meant as nothing in particular.`]
  }
}

function worstCast(spots: Prediction['background']['spots']): string {
  const worst = [...spots].sort((a, b) => (b.stopsMissing ?? 99) - (a.stopsMissing ?? 99))[0]
  return worst === undefined || worst.cast === '' ? 'grey' : worst.cast
}

/** Places of the subject in frame, by the light that they belong to; lights of one plane in one colour speak as one. */
function placeLines({ areas, lights }: Prediction): string[] {
  const places = areas.filter(({ inFrame, material }) => inFrame && material !== 'backdrop' && material !== 'front')
  const groups = new Map<string, LightPrediction[]>()
  for (const light of lights.filter(({ on }) => on)) {
    const key = `${light.plane} ${light.gel.clear ? '' : light.gel.name}`
    groups.set(key, [...(groups.get(key) ?? []), light])
  }
  return [...groups.values()].flatMap((group): string[] => {
    const shareOf = (area: AreaPrediction): number => area.byLight.reduce((sum, { lightId, share }) => sum + (group.some(({ id }) => id === lightId) ? share : 0), 0)
    const own = places.filter((area) => shareOf(area) >= OWN_SHARE)
    const tinted = places.filter((area) => shareOf(area) >= SEEN_SHARE && shareOf(area) < OWN_SHARE)
    const { gel, plane } = group[0]!
    const who = `${group.map(({ letter }) => letter).join(' and ')}, ${plane.replace('-', ' ')}`
    if (gel.clear) return own.length === 0 ? [] : [`${who}, clear: ${namesOf(own)}. Skin and cloth in their own colour there.`]
    const colour = gel.name.toLowerCase()
    return [
      ...(own.length > 0 ? [`${who}: ${colour} on ${namesOf(own)} is THE LOOK. Do not neutralise it.`] : []),
      ...(tinted.length > 0 ? [`${who}: a tint of ${colour} on ${namesOf(tinted)} is THE LOOK, too.`] : []),
      ...(own.length + tinted.length === 0 && plane !== 'background' ? [`${who}: ${colour} is a rim only; no place that is metered has much of it.`] : []),
    ]
  })
}

function namesOf(areas: readonly AreaPrediction[]): string {
  return areas.map(({ label }) => label).join(', ')
}

function trueLines(look: Look, { areas }: Prediction): string[] {
  const ids = Object.keys(look.mustReadTrue)
  if (ids.length === 0) return []
  return [
    ...ids.map((id) => {
      const label = areas.find((area) => area.id === id)?.label ?? look.points[id]?.label ?? id
      return `${capital(label)}: must read true. Any cast of a gel there is a FAULT.${look.mustReadTrue[id]!.cleanPlatePlanned ? ' Take its colour from the clean plate.' : ''}`
    }),
    '',
  ]
}

function acceptedLines({ accepted }: Prediction): string[] {
  if (accepted.length === 0) return []
  return ['Seen and wanted so (THE LOOK):', ...accepted.map(({ acceptance: { by, atMs, message } }) => `- ${message} (${by}, ${dayText(atMs)})`), '']
}

function warnedLines({ snags }: Prediction): string[] {
  const seen = snags.filter(({ severity }) => severity !== 'note')
  if (seen.length === 0) return []
  return ['The plan warned of this and nobody called it the look. If it shows, it is a FAULT:', ...seen.map(({ message }) => `- ${message}`), '']
}

function seenWords(area: AreaPrediction | undefined): string {
  return area === undefined ? 'as the Frame shows' : seenHueWords(area.colour.display)
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1)
}

/** "2026-03-14", by universal time. */
export function dayText(atMs: number): string {
  return new Date(atMs).toISOString().slice(0, 10)
}
