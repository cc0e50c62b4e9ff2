import type { CautionKind } from '../../shared-core/predict/caution.ts'

/** What each caution is about, in a word or two. */
export const cautionWords: Readonly<Record<CautionKind, string>> = {
  'hot-gel': 'hot gel',
  'tall-stand': 'tall stand',
  boom: 'boom',
  'flash-near-eyes': 'flash near eyes',
  circuit: 'circuits',
  capacitor: 'stored charge',
  'large-modifier': 'large modifier',
  photosensitive: 'photosensitivity',
}
