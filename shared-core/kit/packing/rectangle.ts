/** On a sheet, from its near left corner; whole millimetres, so that edges that meet are equal. */
export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Something to be cut out; it may be turned, since gel has no grain. */
export interface Item {
  readonly id: string
  readonly width: number
  readonly height: number
}

export interface Placed extends Rectangle {
  readonly id: string
}

export function areaOf({ width, height }: Pick<Rectangle, 'width' | 'height'>): number {
  return width * height
}

/** Whether the item fits the space one way round or the other. */
export function fitsIn(item: Pick<Item, 'width' | 'height'>, space: Pick<Rectangle, 'width' | 'height'>): boolean {
  return (item.width <= space.width && item.height <= space.height) || (item.height <= space.width && item.width <= space.height)
}
