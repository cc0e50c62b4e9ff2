interface Key {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

/** What a key does to an area's marker. */
export type AreaKey =
  | { readonly does: 'raise'; readonly stops: number }
  /** To the next one down, up, or the first or last. */
  | { readonly does: 'go'; readonly to: 'next' | 'previous' | 'first' | 'last' }
  /** Begins to type a level, with this. */
  | { readonly does: 'type'; readonly start: string }
  | { readonly does: 'enter' | 'pick' }

/**
 * Up and down pull the level: by the head's step, with shift a third, with alt a whole stop; left and right go through the
 * areas. For those who may not change anything, up and down go through them too.
 * @param stepStops of the head that lights the area most
 */
export function areaKey({ key, shiftKey, altKey, ctrlKey, metaKey }: Key, stepStops: number, mayEdit: boolean): AreaKey | null {
  if (ctrlKey || metaKey) return null
  const stops = altKey ? 1 : shiftKey ? 1 / 3 : stepStops
  switch (key) {
    case 'ArrowUp': return mayEdit ? { does: 'raise', stops } : { does: 'go', to: 'previous' }
    case 'ArrowDown': return mayEdit ? { does: 'raise', stops: -stops } : { does: 'go', to: 'next' }
    case 'PageUp': return mayEdit ? { does: 'raise', stops: 1 } : null
    case 'PageDown': return mayEdit ? { does: 'raise', stops: -1 } : null
    case 'ArrowLeft': return { does: 'go', to: 'previous' }
    case 'ArrowRight': return { does: 'go', to: 'next' }
    case 'Home': return { does: 'go', to: 'first' }
    case 'End': return { does: 'go', to: 'last' }
    case 'Enter': return { does: 'enter' }
    case ' ': return { does: 'pick' }
    default: return mayEdit && /^[-+\d]$/.test(key) ? { does: 'type', start: key } : null
  }
}
