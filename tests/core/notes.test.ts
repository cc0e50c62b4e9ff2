import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as Y from 'yjs'
import { readNotesFromDocument, watchNotes, writeNotesToDocument } from '../../shared-core/document/notesDocument.ts'
import { sha256 } from '../../shared-core/arithmetic/sha256.ts'
import type { NotesCommand } from '../../shared-core/notes/command.ts'
import { commandSchema } from '../../shared-core/notes/command.ts'
import { decide, nextSequence, withWrites, type Brought } from '../../shared-core/notes/decide.ts'
import type { Stamp } from '../../shared-core/notes/entries.ts'
import { chainEnd } from '../../shared-core/notes/lockHash.ts'
import { inSequence, noNotes, readNotes, stateOfNote, supersededBy, type Notes } from '../../shared-core/notes/notes.ts'
import { keptOfLock, verifyLock } from '../../shared-core/notes/verifyLock.ts'

type Role = Stamp['role']
const person = (role: Role, seatId: string = role) => ({ seatId, name: `N ${seatId}`, role })
const photographer = person('photographer')
const client = person('client')

function put(notes: Notes, by: Omit<Stamp, 'atMs' | 'sequence'>, command: NotesCommand, brought: Partial<Brought> = {}): Notes {
  const decision = decide(notes, command, { ...by, atMs: 1_000, sequence: nextSequence(notes) }, { jobId: 'job', ...brought })
  if (!decision.ok) throw new Error(decision.code)
  return withWrites(notes, decision.writes)
}

function refusal(notes: Notes, by: Omit<Stamp, 'atMs' | 'sequence'>, command: NotesCommand): string | null {
  const decision = decide(notes, command, { ...by, atMs: 1, sequence: nextSequence(notes) }, { jobId: 'job' })
  return decision.ok ? null : decision.code
}

const add = (id: string): NotesCommand => ({ do: 'note.add', id, lookId: 'look', pin: { on: 'look' }, text: 'more plum' })
const bytesOf = (text: string) => new TextEncoder().encode(text)
const kept = new Map(['plan', 'prediction', 'picture'].map((text) => [sha256(text), bytesOf(text)]))
const frozen = {
  lookName: 'First', planHash: sha256('plan'), predictionHash: sha256('prediction'), pictureHash: sha256('picture'), standIns: [],
}
const lockOf = (id: string, lookId = 'look'): NotesCommand => (
  { do: 'lock.make', id, lookId, conditions: 'if the print matches', standInsSeen: false, askAgainSteps: 2, planHashSeen: null })
const yesTo = (id: string, lockId: string): NotesCommand => ({ do: 'yes.add', id, lockId, words: 'yes', screenCheckId: null })

function agreed(): Notes {
  let notes = put(noNotes, photographer, lockOf('l1'), { frozen })
  notes = put(notes, client, yesTo('y1', 'l1'))
  notes = put(notes, person('assistant'), yesTo('y2', 'l1'))
  notes = put(notes, photographer, lockOf('l2'), { frozen })
  return put(notes, client, yesTo('y3', 'l2'))
}

describe('what a command does to the notes', () => {
  it('does one thing when sent twice, and nothing over another person', () => {
    const once = put(noNotes, client, add('n1'))
    expect(put(once, client, add('n1'))).toBe(once)
    expect(refusal(once, photographer, add('n1'))).toBe('id-taken')
  })

  it('keeps each change of state; the latest counts, and an old one sent again does not come back', () => {
    let notes = put(noNotes, client, add('n1'))
    const close: NotesCommand = { do: 'note.state', id: 's1', noteId: 'n1', state: 'closed' }
    notes = put(notes, photographer, close)
    notes = put(notes, client, { do: 'note.state', id: 's2', noteId: 'n1', state: 'open' })
    notes = put(notes, photographer, close)
    expect(stateOfNote(notes, 'n1')).toBe('open')
    expect(refusal(notes, person('client', 'other'), { do: 'note.state', id: 's3', noteId: 'n1', state: 'closed' })).toBe('not-yours-to-close')
  })

  it('takes a drawn line back for its own hand alone, and for good', () => {
    const draw: NotesCommand = {
      do: 'stroke.add', id: 'p1', lookId: 'look', line: { on: 'frame', points: [[0.1, 0.2], [0.3, 0.4]] }, colour: '#c04080', widthShare: 0.01,
    }
    const drawn = put(noNotes, client, draw)
    expect(refusal(drawn, photographer, { do: 'stroke.remove', id: 'r1', strokeId: 'p1' })).toBe('only-author')
    const gone = put(put(drawn, client, { do: 'stroke.remove', id: 'r2', strokeId: 'p1' }), client, draw)
    expect(gone.strokes['p1']?.removed).toBe(true)
  })

  it('gives a moment a word after for who meant it alone, and leaves the moment as it was', () => {
    const moment = { lookName: 'Dusk', planHash: 'a'.repeat(64), asSeen: true }
    const meant = put(noNotes, client, { do: 'that-one', id: 't1', lookId: 'look', words: '', planHashSeen: null }, { moment })
    expect(refusal(meant, photographer, { do: 'that-one.words', id: 'w1', thatOneId: 't1', words: 'mine' })).toBe('only-author')
    expect(refusal(meant, client, { do: 'that-one.words', id: 'w2', thatOneId: 't9', words: 'none' })).toBe('no-such-that-one')
    const worded = put(meant, client, { do: 'that-one.words', id: 'w3', thatOneId: 't1', words: 'deeper plum' })
    expect(worded.thatOnes['t1']).toEqual({ ...meant.thatOnes['t1'], words: 'deeper plum' })
    expect(put(worded, client, { do: 'that-one.words', id: 'w4', thatOneId: 't1', words: 'deeper plum' })).toBe(worded)
  })

  it('moves the mark of what was seen forward only, and never past what is written', () => {
    let notes = put(put(noNotes, client, add('n1')), client, add('n2'))
    notes = put(notes, photographer, { do: 'seen', id: 'm1', upTo: 900 })
    expect(notes.seen['photographer']?.upTo).toBe(2)
    expect(put(notes, photographer, { do: 'seen', id: 'm2', upTo: 1 })).toBe(notes)
  })

  it('numbers locks through the job, the later of a look in place of the earlier, and only for the photographer', () => {
    const notes = agreed()
    expect(inSequence(notes, 'locks').map(([id, { number }]) => [id, number])).toEqual([['l1', 1], ['l2', 2]])
    expect([supersededBy(notes, 'l1'), supersededBy(notes, 'l2')]).toEqual(['l2', null])
    expect(refusal(notes, client, yesTo('y9', 'l1'))).toBe('superseded')
    for (const role of ['assistant', 'client'] as const) expect(refusal(notes, person(role), lockOf('l9'))).toBe('only-photographer')
  })

  it('takes one yes of a seat, and only with a screen check of its own', () => {
    let notes = put(noNotes, photographer, lockOf('l1'), { frozen })
    notes = put(notes, client, {
      do: 'screen-check', id: 'c1',
      result: { neutralSurround: true, darkStepsSeen: 9, lightStepsSeen: 11, hueOrder: [0, 1, 3, 2], nightTint: true, tooDim: false, swatchPhotoHash: null, screenWords: 'phone' },
    })
    expect(refusal(notes, photographer, { do: 'yes.add', id: 'y1', lockId: 'l1', words: '', screenCheckId: 'c1' })).toBe('no-such-check')
    notes = put(notes, client, { do: 'yes.add', id: 'y2', lockId: 'l1', words: '', screenCheckId: 'c1' })
    expect(put(notes, client, yesTo('y3', 'l1'))).toBe(notes)
    expect(verifyLock('job', notes, 'l1', kept)).toEqual({ intact: true, problems: [] })
    const tint = { ...notes.screenChecks['c1']!, result: { ...notes.screenChecks['c1']!.result, nightTint: false } }
    expect(verifyLock('job', { ...notes, screenChecks: { c1: tint } }, 'l1', kept).intact).toBe(false)
  })
})

describe('a lock shows tampering', () => {
  it('is intact as made', () => {
    for (const id of ['l1', 'l2']) expect(verifyLock('job', agreed(), id, kept)).toEqual({ intact: true, problems: [] })
    expect(chainEnd(agreed(), 'l1')).toBe(agreed().yeses['y2']?.hash)
  })

  it('of any field of the lock or of a yes, and of what it was of another job', () => {
    const notes = agreed()
    const changed = (change: Partial<Notes>, id = 'l1') => verifyLock('job', { ...notes, ...change }, id, kept).intact
    const { l1, l2 } = notes.locks
    for (const other of [
      { conditions: 'none' }, { number: 7 }, { lookId: 'other' }, { askAgainSteps: 9 }, { pictureHash: sha256('plan') },
      { by: { ...l1!.by, name: 'Somebody' } }, { by: { ...l1!.by, atMs: 2 } },
    ]) expect(changed({ locks: { l1: { ...l1!, ...other }, l2: l2! } })).toBe(false)
    const { y1, y2, y3 } = notes.yeses
    expect(changed({ yeses: { y1: { ...y1!, words: 'no' }, y2: y2!, y3: y3! } })).toBe(false)
    expect(changed({ yeses: { y2: y2!, y3: y3! } })).toBe(false)
    expect(changed({ yeses: { y1: y1!, y3: y3! } }, 'l2')).toBe(false)
    expect(changed({ locks: { l2: l2! } }, 'l2')).toBe(false)
    expect(verifyLock('another', notes, 'l1', kept).intact).toBe(false)
  })

  it('of a single bit of any kept thing, or its absence', () => {
    const notes = agreed()
    for (const hash of keptOfLock(notes.locks['l1']!)) {
      const bytes = Uint8Array.from(kept.get(hash)!)
      bytes[0]! ^= 1
      expect(verifyLock('job', notes, 'l1', new Map([...kept, [hash, bytes]])).intact).toBe(false)
      expect(verifyLock('job', notes, 'l1', new Map([...kept].filter(([name]) => name !== hash))).intact).toBe(false)
    }
  })
})

describe('reading notes from a document', () => {
  it('gives back what was written, unchanged entries as the same objects, and tells of changes', () => {
    const doc = new Y.Doc()
    let told = 0
    const stop = watchNotes(doc, () => { told += 1 })
    const notes = agreed()
    for (const kind of ['locks', 'yeses'] as const) {
      writeNotesToDocument(doc, Object.entries(notes[kind]).map(([id, entry]) => ({ kind, id, entry }) as never))
    }
    stop()
    const read = readNotesFromDocument(doc)
    expect(read).toEqual({ notes, leftOut: 0 })
    expect(readNotesFromDocument(doc).notes.locks['l1']).toBe(read.notes.locks['l1'])
    expect(told).toBe(2)
  })

  it('takes anything calmly: what does not hold together is left out', () => {
    fc.assert(fc.property(fc.anything(), (raw) => { expect(Object.keys(readNotes(raw).notes).length).toBe(10) }))
    const good = put(noNotes, client, add('n1')).notes['n1']!
    const hostile = { notes: { n1: good, n2: { ...good, extra: 1 }, constructor: good, 'a b': good, n3: null, n4: 'x' }, locks: [good], yeses: 7 }
    expect(readNotes(hostile)).toEqual({ notes: { ...noNotes, notes: { n1: good } }, leftOut: 5 })
    const doc = new Y.Doc()
    doc.getMap('notes').set('t', new Y.Text('x'))
    doc.getMap('locks').set('m', new Y.Map([['number', 1]]))
    expect(readNotesFromDocument(doc)).toEqual({ notes: noNotes, leftOut: 2 })
  })

  it('reads a document whose maps are of another kind', () => {
    const doc = new Y.Doc()
    const other = new Y.Doc()
    other.getArray('notes').push([1, 2])
    Y.applyUpdate(doc, Y.encodeStateAsUpdate(other))
    expect(readNotesFromDocument(doc).notes).toEqual(noNotes)
  })
})

describe('what may be said at all', () => {
  it('refuses text without signs, with signs that turn the line, too long, and strokes without end', () => {
    const text = (value: string) => commandSchema.safeParse({ ...add('n1'), text: value }).success
    expect([text('deeper violet\nplease'), text('  '), text('a\u202eb'), text('a\u0000'), text('x'.repeat(2_001))]).toEqual([true, false, false, false, false])
    const line = (points: number) => commandSchema.safeParse({
      do: 'stroke.add', id: 'p', lookId: 'l', line: { on: 'frame', points: Array.from({ length: points }, () => [0, 1]) }, colour: '#000000', widthShare: 0.01,
    }).success
    expect([line(400), line(401), line(0)]).toEqual([true, false, false])
  })

  it('takes no stamp from whoever sends it', () => {
    expect(commandSchema.safeParse({ ...add('n1'), by: { ...photographer, atMs: 1, sequence: 1 } }).success).toBe(false)
  })
})
