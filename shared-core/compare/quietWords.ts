import type { Plan } from '../plan/schema/plan.ts'

/** Of things that no light or lens knows of, by the last part of their name. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  sandbag: 'sandbag', safetyCable: 'safety cable', support: 'another stand', circuitId: 'another circuit', letter: 'another letter',
  setUpOrder: 'another place in the set-up order', plane: 'another task', serves: 'metered elsewhere', wantedStops: 'another wanted level',
  note: 'note', label: 'another name', name: 'name', order: 'place among the looks', framesPlanned: 'frames planned', intent: 'what the background should be',
  mustReadTrue: 'what must read true', accepted: 'accepted snags', meter: 'meter', title: 'the job\'s title', brief: 'the brief', team: 'the team',
  shutterSeconds: 'shutter', syncSeconds: 'sync time', radioTrigger: 'radio trigger', whiteBalanceFixed: 'white balance fixed or not',
}

/** A change without any effect on light or lens, named: "B sandbag on", "the brief changed". */
export function quietWords(key: string, before: Plan, after: Plan, lookId: string): string {
  const parts = key.split('/')
  const field = parts.at(-1)!
  const words = FIELD_WORDS[field] ?? field.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`)
  if (parts[0] === 'lights') return `${lightName(before, after, lookId, parts[1]!)} ${lightField(field, words, after.looks[lookId]?.lights[parts[1]!])}`
  if (parts[0] === 'pieces') return `${(after.looks[lookId] ?? before.looks[lookId])?.pieces[parts[1]!]?.label ?? 'a piece'}: ${words}`
  if (parts[0] === 'room') return parts[1] === 'circuits' ? 'circuits changed' : `room: ${words} changed`
  if (parts[0] === 'heads' || parts[0] === 'modifiers' || parts[0] === 'gels') return `kit: ${after[parts[0]][parts[1]!]?.name ?? before[parts[0]][parts[1]!]?.name ?? 'something'} changed`
  if (parts.length === 2 && parts[0] !== undefined) return `${parts[0]}: ${words} changed`
  return `${words} changed`
}

function lightName(before: Plan, after: Plan, lookId: string, lightId: string): string {
  return after.looks[lookId]?.lights[lightId]?.letter ?? before.looks[lookId]?.lights[lightId]?.letter ?? 'a light'
}

function lightField(field: string, words: string, light: { readonly sandbag: boolean; readonly safetyCable: boolean } | undefined): string {
  if (light !== undefined && (field === 'sandbag' || field === 'safetyCable')) return `${words} ${light[field] ? 'on' : 'off'}`
  return field === 'note' ? 'note changed' : words
}
