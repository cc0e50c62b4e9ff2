/** First byte of an unfragmented binary frame: FIN and opcode 2 (RFC 6455, section 5.2). */
const FINAL_BINARY = 0x82

/**
 * A whole WebSocket frame around a message, as a server sends it: binary, unmasked. Made once and written as it is to
 * every receiver, where the socket library would put a header together for each.
 */
export function webSocketFrame(message: Uint8Array): Buffer {
  const { byteLength } = message
  const headerBytes = byteLength < 126 ? 2 : byteLength < 65_536 ? 4 : 10
  const frame = Buffer.allocUnsafe(headerBytes + byteLength)
  frame[0] = FINAL_BINARY
  if (headerBytes === 2) frame[1] = byteLength
  else if (headerBytes === 4) {
    frame[1] = 126
    frame.writeUInt16BE(byteLength, 2)
  } else {
    frame[1] = 127
    frame.writeBigUInt64BE(BigInt(byteLength), 2)
  }
  frame.set(message, headerBytes)
  return frame
}
