import type { Severity } from '../../shared-core/predict/snag.ts'

/** A mark and a word for each loudness, so that neither colour nor order alone tells them apart. */
export const severityWords: Readonly<Record<Severity, { readonly mark: string; readonly word: string }>> = {
  stop: { mark: '■', word: 'Stop' },
  look: { mark: '▲', word: 'Look' },
  note: { mark: '●', word: 'Note' },
}
