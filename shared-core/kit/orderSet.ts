import { capital } from '../plan/capital.ts'
import type { Look, Piece } from '../plan/schema/look.ts'
import { keyPart, orderLine, type OrderLine } from './orderLine.ts'

/** What each piece stands on, and how many of it: common practice, no source. A V-flat stands by itself. */
const gripOf: Readonly<Record<Piece['kind'], number>> = { flag: 1, board: 1, scrim: 2, 'v-flat': 0 }

/** Sandbags, flags, boards, scrims and what holds them, and the paper. */
export function orderSet(looks: readonly Look[]): readonly OrderLine[] {
  const pieces = looks.map((look) => Object.values(look.pieces))
  const grip = pieces.map((inLook) => inLook.reduce((sum, { kind }) => sum + gripOf[kind], 0))
  // A sandbag for each light that the plan gives one, and for each stand of a piece, which catches air.
  const bags = looks.map((look, index) => Object.values(look.lights).filter(({ on, sandbag }) => on && sandbag).length + grip[index]!)
  return [
    orderLine({ key: 'grip.grip-stand', case: 'Stands and grip', name: 'Grip stand with arm', byLook: grip, note: 'for flags, boards and scrims' }),
    orderLine({ key: 'grip.sandbag', case: 'Stands and grip', name: 'Sandbag', byLook: bags }),
    ...kindsOf(pieces), ...papersOf(looks),
  ].filter(({ needed }) => needed > 0)
}

function kindsOf(pieces: readonly (readonly Piece[])[]): readonly OrderLine[] {
  const keys = [...new Set(pieces.flat().map(pieceKey))].sort()
  return keys.map((key) => {
    const piece = pieces.flat().find((one) => pieceKey(one) === key)!
    return orderLine({
      key, case: 'Flags and boards', name: pieceName(piece), size: piece,
      byLook: pieces.map((inLook) => inLook.filter((one) => pieceKey(one) === key).length),
      note: piece.kind === 'v-flat' ? 'size of one panel' : '',
    })
  })
}

function pieceKey({ kind, widthMetres, heightMetres, front, transmittance }: Piece): string {
  const size = [widthMetres, heightMetres].map((metres) => Math.round(metres * 100)).sort((a, b) => a - b).join('x')
  return `piece.${kind}.${size}.${keyPart(toneOf(front))}.${Math.round(transmittance * 100)}`
}

function pieceName({ kind, front, transmittance }: Piece): string {
  if (kind === 'scrim') return `Scrim on its frame, ${Math.round(transmittance * 100)} % through`
  return capital(`${toneOf(front)} ${kind === 'v-flat' ? 'V-flat' : kind}`)
}

function papersOf(looks: readonly Look[]): readonly OrderLine[] {
  const papers = looks.map(({ backdrop }) => (backdrop.kind === 'paper' ? backdrop : null))
  const keyOf = (paper: Look['backdrop'] | null) => (paper ? `paper.${Math.round(paper.widthMetres * 100)}.${paper.swatch.slice(1)}` : '')
  const keys = [...new Set(papers.map(keyOf))].filter((key) => key !== '').sort()
  const stands = orderLine({
    key: 'paper.stands', case: 'Background', name: 'Pair of background stands with crossbar', byLook: papers.map((paper) => (paper ? 1 : 0)),
  })
  return [...keys.map((key) => {
    const paper = papers.find((one) => keyOf(one) === key)!
    return orderLine({
      key, case: 'Background', name: `Paper roll, ${toneOf(paper.swatch)}`, size: { widthMetres: paper.widthMetres, heightMetres: null },
      byLook: papers.map((one) => (keyOf(one) === key ? 1 : 0)),
    })
  }), stands]
}

/** "black", "mid grey", "white", or a colour by its swatch. */
function toneOf(swatch: string): string {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(swatch.slice(at, at + 2), 16)) as [number, number, number]
  if (Math.max(red, green, blue) - Math.min(red, green, blue) > 24) return `coloured ${swatch}`
  const tone = (red + green + blue) / 3
  if (tone < 48) return 'black'
  if (tone < 100) return 'dark grey'
  if (tone < 160) return 'mid grey'
  return tone < 215 ? 'light grey' : 'white'
}
