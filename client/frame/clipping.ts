type Clipped = readonly [red: boolean, green: boolean, blue: boolean]

const names = ['red', 'green', 'blue'] as const

/** The clipped channels as letters on a mark: "B", "RG"; "white" for all three; empty for none. */
export function clippedInLetters(clipped: Clipped): string {
  if (clipped.every(Boolean)) return 'white'
  return names.map((name, i) => (clipped[i] ? name.charAt(0).toUpperCase() : '')).join('')
}

/** The same for those who listen: ", blue clips". */
export function clippedInWords(clipped: Clipped): string {
  if (clipped.every(Boolean)) return ', clips to white'
  const which = names.filter((_, i) => clipped[i])
  return which.length === 0 ? '' : `, ${which.join(' and ')} ${which.length === 1 ? 'clips' : 'clip'}`
}

/** Whether any channel of any pixel is full. @param linear camera channels, three a pixel, 1 where one is full */
export function clipsAnywhere(linear: Float32Array): boolean {
  return linear.some((channel) => channel >= 1)
}
