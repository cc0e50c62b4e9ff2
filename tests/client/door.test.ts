import { SEES_PLAINLY } from '../../client/session/board.ts'
import { describe, expect, it } from 'vitest'
import { REFUSALS, refusalText, type Refusal } from '../../server/relay/refusals.ts'
import { meaningOf, readRefusal } from '../../client/connection/refusal.ts'
import type { Person } from '../../client/session/board.ts'
import { readPastedLink, readRoute } from '../../client/session/route.ts'
import { rightsOf } from '../../client/session/rights.ts'
import { fileNameOf } from '../../client/shell/dialogs/jobFile.ts'

describe('addresses', () => {
  it('tells the three kinds of page apart, and keeps the key out of the path', () => {
    expect(readRoute({ pathname: '/', hash: '' })).toEqual({ page: 'welcome' })
    expect(readRoute({ pathname: '/j/abc', hash: '#k3y' })).toEqual({ page: 'join', jobId: 'abc', linkKey: 'k3y' })
    expect(readRoute({ pathname: '/s/abc', hash: '' })).toEqual({ page: 'board', seatId: 'abc' })
    expect(readRoute({ pathname: '/s/../etc', hash: '' })).toEqual({ page: 'welcome' })
  })

  it('opens a pasted link of this relay and no other', () => {
    const origin = 'http://127.0.0.1:4200'
    expect(readPastedLink(` ${origin}/j/abc#k3y `, origin)).toBe('/j/abc#k3y')
    expect(readPastedLink('/j/abc#k3y', origin)).toBe('/j/abc#k3y')
    expect(readPastedLink('https://elsewhere.example/j/abc#k3y', origin)).toBeNull()
    expect(readPastedLink('javascript:alert(1)', origin)).toBeNull()
    expect(readPastedLink('hello', origin)).toBeNull()
  })
})

describe('the relay’s refusals', () => {
  it('are understood, each of them', () => {
    for (const code of Object.keys(REFUSALS) as Refusal[]) expect(readRefusal(refusalText(code))).toEqual({ code, words: REFUSALS[code] })
  })

  it('drop the copy here only when the relay will never take it', () => {
    const meaning = (code: string) => meaningOf({ code, words: '' })
    expect(meaning('no-pen')).toBe('start-over')
    expect(meaning('document-full')).toBe('start-over')
    expect(meaning('not-kept')).toBe('keep-waiting')
    expect(meaning('presence-too-large')).toBe('only-words')
  })

  it('are words even without a code', () => {
    expect(readRefusal('Access denied')).toEqual({ code: 'refused', words: 'Access denied' })
    expect(readRefusal('').words).not.toBe('')
  })
})

describe('rights', () => {
  const live = { state: 'live', words: 'Live', notKept: null } as const
  const self = (hasPen: boolean): Person => ({
    seatId: 's1', name: 'Pell', role: 'client', isSelf: true, hasPen, pointer: null, selection: null, inHand: null, lookId: null, sees: SEES_PLAINLY,
  })

  it('let photographer and assistant write whoever holds the pen', () => {
    expect(rightsOf('photographer', [], live).mayEdit).toBe(true)
    expect(rightsOf('assistant', [], live).mayEdit).toBe(true)
  })

  it('let a client write with the pen alone, and say why not', () => {
    expect(rightsOf('client', [self(true)], live)).toEqual({ mayEdit: true, mayNotBecause: null })
    expect(rightsOf('client', [self(false)], live).mayEdit).toBe(false)
    expect(rightsOf('client', [self(false)], live).mayNotBecause).toMatch(/photographer/)
  })

  it('go on without a network, and end when the relay turns the seat away', () => {
    expect(rightsOf('assistant', [], { ...live, state: 'away' }).mayEdit).toBe(true)
    expect(rightsOf('photographer', [], { ...live, state: 'refused', words: 'This link was withdrawn' })).toEqual({
      mayEdit: false, mayNotBecause: 'This link was withdrawn',
    })
  })
})

describe('file names', () => {
  it.each([
    ['Late Harvest', 'Late Harvest.halfstop.json'],
    ['../../etc/passwd', 'etc passwd.halfstop.json'],
    ['', 'job.halfstop.json'],
    ['Été “1/2”?', 'Été “1 2”.halfstop.json'],
  ])('%s', (title, name) => expect(fileNameOf(title)).toBe(name))
})
