import * as decoding from 'lib0/decoding'
import * as encoding from 'lib0/encoding'
import * as authProtocol from 'y-protocols/auth'
import * as syncProtocol from 'y-protocols/sync'
import { webSocketFrame } from './webSocketFrame.ts'

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
  return frame((encoder) => {
    encoding.writeVarUint(encoder, MESSAGE.awareness)
    encoding.writeVarUint8Array(encoder, awarenessUpdate)
  })
}

/** `reason` is shown to the person by clients that show anything. */
export function deniedFrame(reason: string): Buffer {
  return frame((encoder) => {
    encoding.writeVarUint(encoder, MESSAGE.auth)
    authProtocol.writePermissionDenied(encoder, reason)
  })
}

function syncFrame(step: number, bytes: Uint8Array): Buffer {
  return frame((encoder) => {
    encoding.writeVarUint(encoder, MESSAGE.sync)
    encoding.writeVarUint(encoder, step)
    encoding.writeVarUint8Array(encoder, bytes)
  })
}

/** Ready for the wire, so that the same bytes go to every receiver without any work for each. */
function frame(write: (encoder: encoding.Encoder) => void): Buffer {
  const encoder = encoding.createEncoder()
  write(encoder)
  return webSocketFrame(encoding.toUint8Array(encoder))
}
