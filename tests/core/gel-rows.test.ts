import { describe, expect, it } from 'vitest'
import { parseGelRows } from '../../shared-core/spectra/gel/parseRows.ts'
import { transmittanceOfRows } from '../../shared-core/spectra/gel/rows.ts'

const rowsOf = (text: string) => {
  const parsed = parseGelRows(text)
  if (!parsed.ok) throw new Error(parsed.problems.map(({ line, text: words }) => `${line}: ${words}`).join('; '))
  return parsed.rows
}
const problemsOf = (text: string) => {
  const parsed = parseGelRows(text)
  return parsed.ok ? [] : parsed.problems
}

describe('reading a measured sheet', () => {
  const wanted = [[400, 0.12], [550, 0.5], [700, 0.9]]

  it.each([
    ['commas', 'nm,T\n400,0.12\n550,0.5\n700,0.9\n'],
    ['semicolons and decimal commas', 'Wellenlänge;T\r\n400;0,12\r\n550;0,5\r\n700;0,9\r\n'],
    ['tabs', '400\t0.12\n550\t0.5\n700\t0.9'],
    ['blanks', '# made in the studio\n\n400 0.12\n550   0.5\n700 0.9\n'],
    ['commas and blanks', '400, 0.12\n550, 0.5\n700, 0.9'],
    ['percents by value', 'wavelength,transmission\n400,12\n550,50\n700,90'],
    ['percents by sign', '400 nm;12 %\n550 nm;50 %\n700 nm;90 %'],
    ['quotes', '"400","0.12"\n"550","0.5"\n"700","0.9"'],
    ['further columns', '400;0.12;x\n550;0.5;y\n700;0.9;z'],
  ])('parted by %s', (_, text) => {
    const rows = rowsOf(text)
    expect(rows).toHaveLength(3)
    rows.forEach(([nm, share], k) => {
      expect(nm).toBe(wanted[k]![0])
      expect(share).toBeCloseTo(wanted[k]![1]!, 12)
    })
  })

  it('says which line is wrong and why', () => {
    const found = problemsOf('nm;T\n400;0.1\nhello\n500;0.2\n90;0.3\n600;-0.4')
    expect(found.map(({ line }) => line).sort()).toEqual([3, 5, 6])
    expect(found.find(({ line }) => line === 3)?.text).toContain('hello')
    expect(found.find(({ line }) => line === 5)?.text).toContain('90 nm')
  })

  it('does not take one slip for percents', () => {
    expect(problemsOf('400;0.1\n500;1.4\n600;0.3')).toEqual([expect.objectContaining({ line: 2 })])
  })

  it('refuses what it could only guess', () => {
    expect(problemsOf('0.4;0.1\n0.5;0.2')[0]?.text).toContain('micrometres')
    expect(problemsOf('400,0,12\n500,0,5')[0]?.text).toContain('semicolons')
    expect(problemsOf('400;120\n500;50')[0]).toMatchObject({ line: 1 })
    expect(problemsOf('only words')[0]?.line).toBe(0)
    expect(problemsOf('')).toHaveLength(1)
    expect(problemsOf('400;0.1\n550;0.5')[0]?.text).toContain('430 to 660')
    expect(problemsOf(Array.from({ length: 1_200 }, (_, i) => `${380 + i / 3};0.5`).join('\n'))[0]?.text).toContain('1200')
  })

  it('remarks on what is missing', () => {
    const parsed = parseGelRows('420;0.1\n670;0.2')
    expect(parsed.ok && parsed.remarks.join(' ')).toMatch(/420-670 nm only.*250 nm/)
  })
})

describe('a curve from rows', () => {
  it('is straight between rows, level beyond, whatever their order', () => {
    const curve = transmittanceOfRows([[500, 0.2], [400, 0.1], [500, 0.4]])
    expect(curve[0]).toBe(0.1)
    expect(curve[14]).toBeCloseTo(0.2, 12)
    expect(curve[24]).toBeCloseTo(0.3, 12)
    expect(curve[80]).toBeCloseTo(0.3, 12)
  })
})
