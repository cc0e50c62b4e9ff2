import { describe, expect, it } from 'vitest'
import type { Thread } from '../../client/notes/engine/threads.ts'
import { noteList, threadBeside } from '../../client/notes/pencil/noteOrder.ts'
import { isNewThread, mayBeSaidSeen } from '../../client/notes/pencil/readNotes.ts'
import { colourAbout, colourChange, pinnedColour } from '../../client/notes/pencil/reread.ts'
import { spreadMarks } from '../../client/notes/pencil/spreadMarks.ts'
import type { Note, Stamp } from '../../shared-core/notes/entries.ts'
import { noNotes, type Notes } from '../../shared-core/notes/notes.ts'
import { hexFromLinear } from '../../shared-core/spectra/srgb.ts'

const by = (seatId: string, sequence: number): Stamp => ({ seatId, name: seatId, role: 'client', atMs: 1_000, sequence })
const note = (seatId: string, sequence: number): Note => ({ lookId: 'one', pin: { on: 'look' }, text: 'a', colour: null, by: by(seatId, sequence) })

function thread(id: string, sequence: number, state: Thread['state'] = 'open', replies: readonly number[] = []): Thread {
  const under = replies.map((at) => ({ id: `${id} ${at}`, reply: { noteId: id, text: 'b', by: by('other', at) } }))
  return { id, note: note('other', sequence), state, replies: under, isUnread: true }
}

describe('the list of notes', () => {
  const threads = [thread('a', 1), thread('b', 2, 'closed'), thread('c', 3, 'answered'), thread('d', 4, 'closed', [9]), thread('e', 5), thread('f', 6, 'open', [8])]
  const fresh = new Set(['d', 'a'])
  const list = noteList(threads, ({ id }) => fresh.has(id))

  it('has what is new first, then what is open, then answered, each with the last spoken of first; closed ones are folded', () => {
    expect(list.first.map(({ id }) => id)).toEqual(['d', 'a', 'f', 'e', 'c'])
    expect(list.closed.map(({ id }) => id)).toEqual(['b'])
  })

  it('numbers notes in the order they were written, whatever has become of them', () => {
    expect(Object.fromEntries([...list.first, ...list.closed].map(({ id, number }) => [id, number]))).toEqual({ a: 1, b: 2, c: 3, d: 4, e: 5, f: 6 })
  })

  it('goes on from note to note in its own order, into the closed ones, and ends', () => {
    expect(threadBeside(list, 'a', 1)?.id).toBe('f')
    expect(threadBeside(list, 'c', 1)?.id).toBe('b')
    expect(threadBeside(list, 'b', 1)).toBeNull()
    expect(threadBeside(list, 'd', -1)).toBeNull()
  })
})

describe('read by one person', () => {
  it('a thread is read up to what others last said in it, and new again with the next', () => {
    const twice = thread('a', 1, 'open', [4])
    expect(isNewThread(twice, 'me', {})).toBe(true)
    expect(isNewThread(twice, 'me', { a: 4 })).toBe(false)
    expect(isNewThread(thread('a', 1, 'open', [4, 7]), 'me', { a: 4 })).toBe(true)
  })

  it('tells the relay no further than what was read, and passes over no lock that was not looked at', () => {
    const notes: Notes = { ...noNotes, notes: { a: note('other', 1), b: note('other', 2), c: note('other', 3) }, seen: { me: { upTo: 0 } } }
    expect(mayBeSaidSeen(notes, 'me', { b: 2 })).toBe(0)
    expect(mayBeSaidSeen(notes, 'me', { a: 1, b: 2 })).toBe(2)
    expect(mayBeSaidSeen(notes, 'me', { a: 1, b: 2, c: 3 })).toBe(3)
    const withVote = { ...notes, ballots: { v: { question: 'which', lookIds: ['one', 'two'], by: by('other', 2), voters: [], opened: null } } }
    expect(mayBeSaidSeen(withVote, 'me', { a: 1, b: 2, c: 3 })).toBe(1)
  })
})

describe('a note about a colour', () => {
  /** A neutral of this CIELAB lightness in sRGB: CIE 15, Y = ((L* + 16) / 116) cubed, equal channels. */
  const grey = (lightness: number): string => {
    const y = ((lightness + 16) / 116) ** 3
    return hexFromLinear([y, y, y])
  }

  it('asks to be re-read past one step of CIEDE2000, and not before', () => {
    // Between neutrals of L* 50 and 52 the difference is about 2, and S_L there is 1 (Sharma, Wu, Dalal 2005, eq. 15).
    expect(colourChange(grey(50), grey(52))!.steps).toBeGreaterThan(1.7)
    expect(colourChange(grey(50), grey(52))!.steps).toBeLessThan(2.3)
    expect(colourChange(grey(50), grey(50.5))).toBeNull()
    expect(colourChange('#8a4f6d', '#8a4f6d')).toBeNull()
    expect(colourChange('#8a4f6d', '#7a3fa0')).toMatchObject({ was: '#8a4f6d', is: '#7a3fa0' })
  })

  it('is as it was while the place, or one just beside it, still shows it', () => {
    expect(colourAbout(grey(50), [grey(55), grey(50.3), grey(45)])).toBe(grey(50))
    expect(colourAbout(grey(50), [grey(55), grey(60), grey(45)])).toBe(grey(55))
    expect(colourAbout(grey(50), [])).toBeNull()
  })

  it('is one pinned to a colour, or one that took its place’s colour with it', () => {
    expect(pinnedColour({ pin: { on: 'colour', areaId: 'lips', xyz: [0.1, 0.1, 0.1], hex: '#aa3344' }, colour: null })).toBe('#aa3344')
    expect(pinnedColour({ pin: { on: 'frame', xShare: 0, yShare: 0 }, colour: '#112233' })).toBe('#112233')
    expect(pinnedColour({ pin: { on: 'look' }, colour: null })).toBeNull()
  })
})

describe('numbers beside their places', () => {
  it('lie on no other and over no edge while there is room', () => {
    const places = [{ x: 150, y: 200 }, { x: 154, y: 203 }, { x: 149, y: 206 }, { x: 152, y: 198 }, { x: 3, y: 3 }, { x: 298, y: 2 }]
    const middles = spreadMarks(places, 300, 450, 20).map(([dx, dy], i) => ({ x: places[i]!.x + dx, y: places[i]!.y + dy }))
    for (const [i, one] of middles.entries()) {
      expect(one.x >= 10 && one.x <= 290 && one.y >= 10 && one.y <= 440).toBe(true)
      for (const other of middles.slice(i + 1)) expect(Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y))).toBeGreaterThanOrEqual(20)
    }
  })
})
