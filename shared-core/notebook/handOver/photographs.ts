/** A photograph of a stand at wrap, as the folder has it. */
export interface HandedPhotograph {
  readonly standId: string
  /** Its place in the folder: "photographs/A-1.jpg". */
  readonly name: string
  /** Why it is not there, in words; null when it is. */
  readonly missing: string | null
}

/** What there is of a stand's photographs, a line for those that are there and one for each that is not. */
export function photographLines(photographs: readonly HandedPhotograph[]): readonly string[] {
  const there = photographs.filter(({ missing }) => missing === null)
  return [
    ...(there.length === 0 ? [] : [`  ${there.length === 1 ? 'Photograph' : 'Photographs'}: ${there.map(({ name }) => name).join(', ')}.`]),
    ...photographs.flatMap(({ name, missing }) => (missing === null ? [] : [`  MISSING: ${name}: ${missing}.`])),
  ]
}

/** For the file that is read first; null when nobody took any. */
export function photographsInWords(photographs: readonly HandedPhotograph[]): string | null {
  if (photographs.length === 0) return null
  const missing = photographs.filter((one) => one.missing !== null).length
  const there = photographs.length - missing
  const words = there === 0 ? 'none of the stands at wrap is here' : `${there} of the stands at wrap: these are photographs, and “As shot.txt” says which is whose`
  return `photographs: ${words}${missing === 0 ? '' : `; ${missing} ${missing === 1 ? 'is' : 'are'} MISSING, named in “As shot.txt”`}`
}
