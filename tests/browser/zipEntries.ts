import { crc32, inflateRawSync } from 'node:zlib'

/**
 * The files of a zip, read by its central directory (PKWARE APPNOTE.TXT 4.3.12 and 4.3.7: signatures 0x02014b50 and
 * 0x04034b50), each held against its own CRC-32.
 */
export function zipEntries(zip: Buffer): ReadonlyMap<string, Buffer> {
  const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]))
  if (end < 0) throw new Error('that is no zip')
  const files = new Map<string, Buffer>()
  let at = zip.readUInt32LE(end + 16)
  for (let left = zip.readUInt16LE(end + 10); left > 0; left--) {
    if (zip.readUInt32LE(at) !== 0x02014b50) throw new Error('no entry where one should be')
    const [method, crc, packed] = [zip.readUInt16LE(at + 10), zip.readUInt32LE(at + 16), zip.readUInt32LE(at + 20)]
    const [nameLength, extra, comment] = [zip.readUInt16LE(at + 28), zip.readUInt16LE(at + 30), zip.readUInt16LE(at + 32)]
    const name = zip.toString('utf8', at + 46, at + 46 + nameLength)
    const header = zip.readUInt32LE(at + 42)
    const from = header + 30 + zip.readUInt16LE(header + 26) + zip.readUInt16LE(header + 28)
    const bytes = zip.subarray(from, from + packed)
    const content = method === 0 ? Buffer.from(bytes) : inflateRawSync(bytes)
    if (crc32(content) !== crc) throw new Error(`${name} is damaged`)
    files.set(name, content)
    at += 46 + nameLength + extra + comment
  }
  return files
}
