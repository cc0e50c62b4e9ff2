import { describe, expect, it } from 'vitest'
import { largestEmbeddedJpeg } from '../../shared-core/testFrame/embeddedJpeg.ts'

// Files put together by hand from the markers of ITU-T T.81, annex B, and the header of TIFF 6.0.

const segment = (marker: number, payload: readonly number[]) => [0xff, marker, (payload.length + 2) >> 8, (payload.length + 2) & 255, ...payload]
const frame = (marker: number, width: number, height: number) => segment(marker, [8, height >> 8, height & 255, width >> 8, width & 255, 1, 1, 0x11, 0])
const scan = [...segment(0xda, [1, 1, 0, 0, 63, 0]), 12, 0xff, 0, 77, 0xff, 0xd0, 5, 6]
const jpeg = (width: number, height: number, marker = 0xc0, before: readonly number[] = []) => [0xff, 0xd8, ...before, ...frame(marker, width, height), ...scan, 0xff, 0xd9]
const TIFF = [0x49, 0x49, 42, 0, 8, 0, 0, 0]
const sensor = Array.from({ length: 300 }, (_, i) => (i % 7 === 0 ? 0xff : (i * 37) & 255))

describe('the preview inside a raw file', () => {
  const small = jpeg(160, 120)
  const large = jpeg(1620, 1080, 0xc0, segment(0xe1, jpeg(4000, 3000)))
  const raw = jpeg(6000, 4000, 0xc3)

  it('is the largest that can be shown: not the thumbnail, nor the one inside it, nor the lossless sensor data', () => {
    const before = [...TIFF, ...small, ...sensor]
    const file = Uint8Array.from([...before, ...large, ...raw, ...sensor])
    const found = largestEmbeddedJpeg(file)!
    expect(found).toEqual({ start: before.length, end: before.length + large.length, width: 1620, height: 1080 })
    expect([...file.subarray(found.end - 2, found.end)]).toEqual([0xff, 0xd9])
  })

  it('is progressive too', () => {
    expect(largestEmbeddedJpeg(Uint8Array.from([...TIFF, ...jpeg(800, 600, 0xc2)]))).toMatchObject({ width: 800, height: 600 })
  })

  it('is none where none is whole', () => {
    expect(largestEmbeddedJpeg(Uint8Array.from([...TIFF, ...sensor]))).toBeNull()
    expect(largestEmbeddedJpeg(Uint8Array.from([...TIFF, ...small.slice(0, -2)]))).toBeNull()
    expect(largestEmbeddedJpeg(Uint8Array.from([]))).toBeNull()
    expect(largestEmbeddedJpeg(Uint8Array.from([0xff, 0xd8, 0xff]))).toBeNull()
  })
})
