/** "2.5 min" */
export function minutesText(minutes: number): string {
  return `${Number(minutes.toFixed(2))} min`
}
