interface Key {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
}

/**
 * What a key does to a power: stops up or down, all the way, or nothing (null). Arrows a tenth, with shift a third, with
 * alt a whole stop. The ladder stands upright, so Home is its top: full power.
 */
export function powerKey({ key, shiftKey, altKey }: Key): number | 'full' | 'lowest' | null {
  const stops = altKey ? 1 : shiftKey ? 1 / 3 : 0.1
  switch (key) {
    case 'ArrowUp':
    case 'ArrowRight':
      return stops
    case 'ArrowDown':
    case 'ArrowLeft':
      return -stops
    case 'PageUp':
      return 1
    case 'PageDown':
      return -1
    case 'Home':
      return 'full'
    case 'End':
      return 'lowest'
    default:
      return null
  }
}
