import type { ConnectionView } from '../session/board.ts'

/**
 * The connection to the relay as a pure state machine. The table says for every state and every event what comes next;
 * the compiler refuses a table with a hole. What a state does to sockets lives in `link.ts`.
 *
 * What holds, whatever happens (each has its check):
 *  1. Only `synced` leads to `live`: nobody is told "live" before the relay's copy is here.
 *  2. `turned-away` and `left` are ends: no event leads out of them.
 *  3. From every other state the relay can be reached again.
 *  4. A refused edit is never passed over: unless at an end, `edit-refused` always leads to `starting-over`.
 *  5. `offline` is the device's opinion alone: a relay on the same machine answers without a network, so a socket that
 *     opens leads out of it.
 */
export const connectionStates = [
  /** Nothing heard from the relay yet. */
  'opening',
  /** The relay answered; its copy is on the way. */
  'syncing',
  'live',
  /** The relay went away; trying again. */
  'waiting',
  /** The device itself says it has no network. */
  'offline',
  /** The relay refused an edit: what is here is dropped for what the relay holds. */
  'starting-over',
  /** The relay will not have this seat any more. */
  'turned-away',
  'left',
] as const
export type ConnectionState = (typeof connectionStates)[number]

export const connectionEvents = [
  'socket-opened', 'synced', 'socket-lost', 'network-gone', 'network-back', 'edit-refused', 'turned-away', 'leave',
] as const
export type ConnectionEvent = (typeof connectionEvents)[number]

type Row = Readonly<Record<ConnectionEvent, ConnectionState>>

const ends = { 'turned-away': 'turned-away', leave: 'left' } as const

function stays(state: ConnectionState): Row {
  return {
    'socket-opened': state, synced: state, 'socket-lost': state, 'network-gone': state, 'network-back': state,
    'edit-refused': state, 'turned-away': state, leave: state,
  }
}

/** What comes next. A late `synced` or `socket-lost` of a socket already given up changes nothing it should not. */
export const nextState: Readonly<Record<ConnectionState, Row>> = {
  opening: {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'waiting', 'network-gone': 'offline',
    'network-back': 'opening', 'edit-refused': 'starting-over', ...ends,
  },
  syncing: {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'waiting', 'network-gone': 'offline',
    'network-back': 'syncing', 'edit-refused': 'starting-over', ...ends,
  },
  live: {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'waiting', 'network-gone': 'offline',
    'network-back': 'live', 'edit-refused': 'starting-over', ...ends,
  },
  waiting: {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'waiting', 'network-gone': 'offline',
    'network-back': 'waiting', 'edit-refused': 'starting-over', ...ends,
  },
  offline: {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'offline', 'network-gone': 'offline',
    'network-back': 'waiting', 'edit-refused': 'starting-over', ...ends,
  },
  'starting-over': {
    'socket-opened': 'syncing', synced: 'live', 'socket-lost': 'waiting', 'network-gone': 'offline',
    'network-back': 'starting-over', 'edit-refused': 'starting-over', ...ends,
  },
  'turned-away': stays('turned-away'),
  left: stays('left'),
}

/** The state, and what has to be known besides to put it into words. */
export interface Connection {
  readonly state: ConnectionState
  /** Whether the relay's copy has ever arrived on this page. */
  readonly everLive: boolean
  /** The relay's reason for turning the seat away. */
  readonly reason: string | null
  /** Whether this device keeps a copy of the job. */
  readonly keptHere: boolean
  /** The relay's words when it cannot keep edits. */
  readonly notKept: string | null
}

export const connectionAtStart: Connection = { state: 'opening', everLive: false, reason: null, keptHere: false, notKept: null }

/** The connection after an event. `reason` belongs to `turned-away`. */
export function afterEvent(connection: Connection, event: ConnectionEvent, reason: string | null = null): Connection {
  const state = nextState[connection.state][event]
  const turnedAwayNow = state === 'turned-away' && connection.state !== 'turned-away'
  return {
    ...connection,
    state,
    everLive: connection.everLive || state === 'live',
    reason: turnedAwayNow ? reason : connection.reason,
    notKept: state === 'live' ? connection.notKept : null,
  }
}

/** The connection as the person should hear it. */
export function viewOf(connection: Connection): ConnectionView {
  const { notKept } = connection
  switch (connection.state) {
    case 'opening':
    case 'syncing':
      return { state: 'joining', words: connection.everLive ? 'Catching up' : 'Joining', notKept }
    case 'live':
      return { state: 'live', words: notKept === null ? 'Live' : 'Live, but not being kept', notKept }
    case 'waiting':
      return { state: 'away', words: `No answer, trying again. ${keptWords(connection)}`, notKept }
    case 'offline':
      return { state: 'away', words: `Offline. ${keptWords(connection)}`, notKept }
    case 'starting-over':
      return { state: 'joining', words: 'Going back to the shared plan', notKept }
    case 'turned-away':
      return { state: 'refused', words: connection.reason ?? 'This link no longer opens the job', notKept }
    case 'left':
      return { state: 'closed', words: 'Closed', notKept }
  }
}

function keptWords(connection: Connection): string {
  return connection.keptHere
    ? 'Your changes are kept on this device and will merge'
    : 'Your changes live in this page alone until it is back: leave it open'
}
