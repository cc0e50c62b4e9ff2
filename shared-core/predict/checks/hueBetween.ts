/** Hue circle of the display's own red, green and blue, in degrees; null for a grey. */
function hueDegrees(hex: string): number | null {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16))
  const most = Math.max(red, green, blue)
  const range = most - Math.min(red, green, blue)
  if (range === 0) return null
  if (most === red) return (60 * (green - blue)) / range
  return most === green ? 120 + (60 * (blue - red)) / range : 240 + (60 * (red - green)) / range
}

/** Angle between two `#rrggbb` colours on the hue circle, 0-180 degrees; null when one has no hue. */
export function hueBetweenDegrees(one: string, other: string): number | null {
  const [a, b] = [hueDegrees(one), hueDegrees(other)]
  if (a === null || b === null) return null
  const around = Math.abs(a - b) % 360
  return Math.min(around, 360 - around)
}
