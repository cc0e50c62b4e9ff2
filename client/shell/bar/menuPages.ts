import type { MenuPage } from './PageMenu.tsx'

/** The pages on which people come to agree, in the order in which they are offered. */
export const agreePages: readonly MenuPage[] = [
  { opens: { kind: 'proof-sheet' }, title: 'Proof sheet', words: 'Looks side by side, and a vote on them' },
  { opens: { kind: 'stand-ins' }, title: 'Stand-ins', words: 'This look on other skin and hair' },
  { opens: { kind: 'agreed' }, title: 'Agreed', words: 'Locks, what changed since, That one' },
  { opens: { kind: 'screen-check' }, title: 'Screen check', words: 'Whether this screen can be trusted with colour' },
]

/** The pages of the set day, in the order in which a day takes them. */
export const dayPages: readonly MenuPage[] = [
  { opens: { kind: 'order-list' }, title: 'Order and pack', words: 'What to bring, case by case, to tick off' },
  { opens: { kind: 'gel-cuts' }, title: 'Gel cuts', words: 'Each cut drawn on the sheets in the drawer' },
  { opens: { kind: 'power' }, title: 'Power', words: 'What hangs on which circuit, and batteries' },
  { opens: { kind: 'rig-sheet' }, title: 'Rig sheet', words: 'One stand at a time, on a phone, without a network' },
  { opens: { kind: 'print' }, title: 'Print', words: 'A page a look and a page a stand, with marks to scan' },
  { opens: { kind: 'meter-book' }, title: 'Meter book', words: 'One reading at a time, and what they teach' },
  { opens: { kind: 'test-frame' }, title: 'Test frame', words: 'A photograph against the prediction, and what is off' },
  { opens: { kind: 'look-change' }, title: 'Look change', words: 'Who moves what, from one look to the next' },
  { opens: { kind: 'as-shot' }, title: 'As shot', words: 'How it truly stood, at wrap, and the strike' },
  { opens: { kind: 'hand-over' }, title: 'Hand-over', words: 'One folder for retouch: what is meant, and how it stood' },
  { opens: { kind: 'notebook' }, title: 'Notebook', words: 'Past looks of this device, and built again here' },
]
