import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  afterEvent, connectionAtStart, connectionEvents, connectionStates, nextState, viewOf, type Connection, type ConnectionState,
} from '../../client/connection/machine.ts'

// The numbers are those of the promises at the head of client/connection/machine.ts.

const ends: readonly ConnectionState[] = ['turned-away', 'left']
const anyState = fc.constantFrom(...connectionStates)
const anyEvent = fc.constantFrom(...connectionEvents)
const in_ = (state: ConnectionState): Connection => ({ ...connectionAtStart, state })

describe('the connection machine', () => {
  it('1: only `synced` leads to live', () => {
    for (const state of connectionStates)
      for (const event of connectionEvents)
        if (nextState[state][event] === 'live' && state !== 'live') expect(event).toBe('synced')
  })

  it('2: no event leads out of an end', () => {
    fc.assert(fc.property(fc.constantFrom(...ends), fc.array(anyEvent), (end, events) => {
      const after = events.reduce((connection, event) => afterEvent(connection, event), in_(end))
      expect(after.state).toBe(end)
    }))
  })

  it('3: a socket that opens and syncs brings every other state back to live', () => {
    fc.assert(fc.property(fc.array(anyEvent), (events) => {
      const before = events.reduce((connection, event) => afterEvent(connection, event), connectionAtStart)
      fc.pre(!ends.includes(before.state))
      expect(afterEvent(afterEvent(before, 'socket-opened'), 'synced').state).toBe('live')
    }))
  })

  it('4: a refused edit is never passed over', () => {
    fc.assert(fc.property(anyState, (state) => {
      expect(nextState[state]['edit-refused']).toBe(ends.includes(state) ? state : 'starting-over')
    }))
  })

  it('5: the device saying it has no network does not stand in the way of a relay that answers', () => {
    const offline = afterEvent(in_('live'), 'network-gone')
    expect(offline.state).toBe('offline')
    expect(afterEvent(offline, 'socket-lost').state).toBe('offline')
    expect(afterEvent(offline, 'socket-opened').state).toBe('syncing')
  })

  it('keeps the first reason for being turned away, and says it', () => {
    const away = afterEvent(in_('live'), 'turned-away', 'This link was withdrawn')
    expect(viewOf(afterEvent(away, 'turned-away', 'another'))).toEqual({ state: 'refused', words: 'This link was withdrawn', notKept: null })
  })

  it('forgets that edits are not kept once the relay that said so is gone', () => {
    const notKept = { ...in_('live'), notKept: 'The disk is full' }
    expect(viewOf(notKept).words).toBe('Live, but not being kept')
    expect(viewOf(afterEvent(notKept, 'socket-lost')).notKept).toBeNull()
  })

  it('does not promise a copy on a device that keeps none', () => {
    expect(viewOf({ ...in_('waiting'), keptHere: true }).words).toMatch(/kept on this device/)
    expect(viewOf({ ...in_('waiting'), keptHere: false }).words).not.toMatch(/kept on this device/)
  })

  it('has words for every state', () => {
    for (const state of connectionStates) expect(viewOf(in_(state)).words).not.toBe('')
  })
})
