import type { SharedPage } from '../../session/board.ts'

/** To follow "Ines has". */
export const PAGE_WORDS: Readonly<Record<SharedPage, string>> = {
  'proof-sheet': 'the proof sheet open',
  'stand-ins': 'the stand-ins open',
  'agreed': 'what is agreed open',
  'screen-check': 'the screen check open',
}
