import type { LightPrediction } from '../../shared-core/predict/prediction.ts'

/** What burns in a clean plate: "A alone, the others off". */
export function plateLetters(lights: readonly LightPrediction[]): string {
  const clear = lights.filter(({ on, gel }) => on && gel.clear).map(({ letter }) => letter)
  if (clear.length === 0) return 'one light without its gel, the others off'
  return `${clear.join(' and ')} alone, the others off`
}
