/** Three numbers that must not be mistaken for one another carry their own type. */
declare const kind: unique symbol

/** CIE 1931 2-degree tristimulus, D65-referred unless the name says otherwise; Y = 1 is full scale. */
export type Xyz = readonly [x: number, y: number, z: number] & { readonly [kind]?: 'xyz' }
/** White-balanced camera channels, linear, 1 is clip. */
export type CameraRgb = readonly [red: number, green: number, blue: number] & { readonly [kind]?: 'camera' }
/** Linear sRGB, not clipped. */
export type LinearSrgb = readonly [red: number, green: number, blue: number] & { readonly [kind]?: 'linear-srgb' }
