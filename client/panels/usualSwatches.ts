/** Usual surfaces to pick by name; each `#rrggbb` as it looks under daylight. Common practice, no source. */
export interface UsualSwatch {
  readonly name: string
  readonly swatch: string
}

export const clothSwatches: readonly UsualSwatch[] = [
  { name: 'black', swatch: '#161616' },
  { name: 'mid grey', swatch: '#777777' },
  { name: 'white', swatch: '#f2f2f2' },
]

export const wallSwatches: readonly UsualSwatch[] = [
  { name: 'black', swatch: '#1c1c1c' },
  { name: 'grey', swatch: '#898989' },
  { name: 'white', swatch: '#eeeeee' },
]

export const paperSwatches: readonly UsualSwatch[] = [
  { name: 'black', swatch: '#1e1e1e' },
  { name: 'mid grey', swatch: '#7c7c7c' },
  { name: 'light grey', swatch: '#b4b4b4' },
  { name: 'white', swatch: '#f0f0f0' },
]

export const hairSwatches: readonly UsualSwatch[] = [
  { name: 'black', swatch: '#1b1614' },
  { name: 'dark brown', swatch: '#3a2a20' },
  { name: 'copper', swatch: '#7d452a' },
  { name: 'fair', swatch: '#b59468' },
  { name: 'grey', swatch: '#9a9894' },
]

export const lipSwatches: readonly UsualSwatch[] = [
  { name: 'bare', swatch: '#a8574f' },
  { name: 'fig', swatch: '#6b2f3e' },
  { name: 'red', swatch: '#a5212e' },
  { name: 'apricot', swatch: '#cf7d5c' },
]
