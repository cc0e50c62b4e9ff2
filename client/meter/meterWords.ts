import { fullAndTenths } from '../../shared-core/exposure/aperture.ts'
import { stopsInWords } from '../../shared-core/plan/entry/stops.ts'
import type { Question } from '../../shared-core/meter/questions.ts'
import { stopsOver, type Turn } from '../../shared-core/meter/turn.ts'

/** "8 and 3": as a meter shows it and as it is called out. */
export function asRead(fNumber: number): string {
  if (!(fNumber > 0)) return 'nothing'
  const { fullFNumber, tenths } = fullAndTenths(fNumber)
  return `${Number(fullFNumber.toPrecision(3))} and ${tenths}`
}

/** "C alone" */
export function firesWords({ fires, letters }: Pick<Question, 'fires' | 'letters'>): string {
  return fires === 'alone' ? `${letters[0]} alone` : `${letters.join(', ')} together`
}

/** "Dome, pointed at the light, at the camera-right cheek" */
export function heldWords({ receptor, pointed, areaLabel }: Pick<Question, 'receptor' | 'pointed' | 'areaLabel'>): string {
  const what = receptor === 'dome' ? 'Dome' : 'Flat disc'
  const where = pointed === 'cloth' ? 'held against the cloth and facing it' : `pointed at the ${pointed}`
  return `${what}, ${where}, at the ${areaLabel}`
}

/** "Read 5.6 and 3, planned 4 and 5: turn down 0.8: −2.0 → −2.8" */
export function answerWords(readFNumber: number, plannedFNumber: number, turn: Turn | null): string {
  const said = `Read ${asRead(readFNumber)}, planned ${asRead(plannedFNumber)}`
  if (turn !== null) return turn.stops === 0 ? `${said}: ${turn.words}` : `${said}: turn ${turn.words}`
  const over = stopsOver(readFNumber, plannedFNumber)
  return Math.abs(over) < 0.05 ? `${said}: as planned` : `${said}: ${stopsInWords(over)} ${over > 0 ? 'over' : 'under'}`
}

export const stateWords: Readonly<Record<Question['state'], string>> = {
  ask: 'to read', again: 'read it again', taken: 'taken', sure: 'sure enough without',
}
