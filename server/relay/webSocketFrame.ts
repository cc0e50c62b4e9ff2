/** First byte of an unfragmented binary frame: FIN and opcode 2 (RFC 6455, section 5.2). */
const FINAL_BINARY = 0x82

/** A WebSocket frame whose message has yet to be written into it. */
export interface OpenFrame {
  readonly frame: Buffer
  /** Where the message begins. */
  readonly start: number
}

/**
 * A whole WebSocket frame around a message of so many bytes, as a server sends it: binary, unmasked. Made once and
 * written as it is to every receiver, where the socket library would put a header together for each.
 */
export function openWebSocketFrame(byteLength: number): OpenFrame {
  const start = byteLength < 126 ? 2 : byteLength < 65_536 ? 4 : 10
  const frame = Buffer.allocUnsafe(start + byteLength)
  frame[0] = FINAL_BINARY
  if (start === 2) frame[1] = byteLength
  else if (start === 4) {
    frame[1] = 126
    frame.writeUInt16BE(byteLength, 2)
  } else {
    frame[1] = 127
    frame.writeBigUInt64BE(BigInt(byteLength), 2)
  }
  return { frame, start }
}
