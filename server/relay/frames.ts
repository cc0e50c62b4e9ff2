import * as decoding from 'lib0/decoding'
import * as authProtocol from 'y-protocols/auth'
import * as syncProtocol from 'y-protocols/sync'
import { openWebSocketFrame } from './webSocketFrame.ts'

/** Kinds of message on the wire of stock y-websocket. */
export const MESSAGE = { sync: 0, awareness: 1, auth: 2, queryAwareness: 3 } as const

/** What a client may say. */
export type Frame =
  /** "Here is what I have (a state vector): what am I missing?" */
  | { readonly kind: 'ask'; readonly stateVector: Uint8Array }
  /** A change to the document; as an answer it is all that we asked for. */
  | { readonly kind: 'change'; readonly update: Uint8Array; readonly isAnswer: boolean }
  | { readonly kind: 'presence'; readonly awarenessUpdate: Uint8Array }
  | { readonly kind: 'askPresence' }

/** Takes a message apart as far as its kind; null when it is none of this protocol. Never throws. */
export function readFrame(bytes: Uint8Array): Frame | null {
  try {
    const decoder = decoding.createDecoder(bytes)
    switch (decoding.readVarUint(decoder)) {
      case MESSAGE.sync: return readSyncFrame(decoder)
      case MESSAGE.awareness: return { kind: 'presence', awarenessUpdate: decoding.readVarUint8Array(decoder) }
      case MESSAGE.queryAwareness: return { kind: 'askPresence' }
      default: return null
    }
  } catch {
    return null
  }
}

function readSyncFrame(decoder: decoding.Decoder): Frame | null {
  const step = decoding.readVarUint(decoder)
  const bytes = decoding.readVarUint8Array(decoder)
  switch (step) {
    case syncProtocol.messageYjsSyncStep1: return { kind: 'ask', stateVector: bytes }
    case syncProtocol.messageYjsSyncStep2: return { kind: 'change', update: bytes, isAnswer: true }
    case syncProtocol.messageYjsUpdate: return { kind: 'change', update: bytes, isAnswer: false }
    default: return null
  }
}

/** "Here is what the relay has: what is it missing?" */
export function askFrame(stateVector: Uint8Array): Buffer {
  return syncFrame(syncProtocol.messageYjsSyncStep1, stateVector)
}

/** The answer to an ask: all that was missing. */
export function answerFrame(update: Uint8Array): Buffer {
  return syncFrame(syncProtocol.messageYjsSyncStep2, update)
}

/** News of the document. */
export function changeFrame(update: Uint8Array): Buffer {
  return syncFrame(syncProtocol.messageYjsUpdate, update)
}

export function presenceFrame(awarenessUpdate: Uint8Array): Buffer {
  return frameOf([MESSAGE.awareness], awarenessUpdate)
}

/** `reason` is shown to the person by clients that show anything. */
export function deniedFrame(reason: string): Buffer {
  return frameOf([MESSAGE.auth, authProtocol.messagePermissionDenied], Buffer.from(reason, 'utf8'))
}

function syncFrame(step: number, bytes: Uint8Array): Buffer {
  return frameOf([MESSAGE.sync, step], bytes)
}

/**
 * Kinds of less than 128 and one field of bytes, as lib0 writes them (length in groups of seven bits, least first), ready
 * for the wire, so that the same bytes go to every receiver without any work for each.
 */
function frameOf(kinds: readonly number[], field: Uint8Array): Buffer {
  let lengthBytes = 1
  for (let rest = field.byteLength; rest > 127; rest = Math.floor(rest / 128)) lengthBytes += 1
  const { frame, start } = openWebSocketFrame(kinds.length + lengthBytes + field.byteLength)
  let at = start
  for (const kind of kinds) frame[at++] = kind
  let rest = field.byteLength
  for (; rest > 127; rest = Math.floor(rest / 128)) frame[at++] = 128 | (rest & 127)
  frame[at++] = rest
  frame.set(field, at)
  return frame
}
