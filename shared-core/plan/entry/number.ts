/** "12.5", "−0.3": fixed decimals with a true minus, so that columns line up; what rounds to nothing has no sign. */
export function formatNumber(value: number, digits: number): string {
  const shown = value.toFixed(digits)
  return Number(shown) === 0 ? shown.replace('-', '') : shown.replace('-', '−')
}
