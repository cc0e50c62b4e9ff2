import type { AreaDifference } from '../../shared-core/testFrame/areaDifferences.ts'
import type { TestFrameVerdict } from '../../shared-core/testFrame/judge.ts'
import { cameraWords, likelihoodWords } from './testFrameWords.ts'

/** What differs and the one thing to look at, then the next suspects folded. */
export function Findings({ verdict, differences }: { readonly verdict: TestFrameVerdict; readonly differences: readonly AreaDifference[] }) {
  const { kind, words, action, suspects, alike, camera } = verdict
  const next = suspects.slice(kind === 'one-thing' ? alike : 0).filter((suspect) => suspect.kind !== 'nothing' && suspect.likelihood >= 0.001).slice(0, 5)
  return (
    <>
      <section className="page-panel tf-card tf-verdict" role="status" aria-label="Verdict" data-kind={kind}>
        <p className="tf-words">{words}</p>
        {action !== '' && <p className="tf-action">{action}</p>}
      </section>
      {kind !== 'too-little' && (
        <section className="page-panel tf-card" aria-label="Where it differs">
          {differences.length === 0 ? <p>Each of the {verdict.differences.length} areas is as planned.</p> : (
            <ol className="tf-differences">
              {differences.map(({ id, label, words: said, seen, planned }, i) => (
                <li key={id}>
                  <span className="tf-number" aria-hidden>{i + 1}</span>
                  <span><b>{label}</b> {said}</span>
                  <span className="tf-swatches" aria-hidden>
                    <i style={{ background: seen }} /><i style={{ background: planned }} />
                  </span>
                </li>
              ))}
            </ol>
          )}
          <p className="page-soft">{cameraWords(camera)}</p>
        </section>
      )}
      {next.length > 0 && (
        <details className="page-panel tf-card tf-next">
          <summary>Next suspects</summary>
          <ul>{next.map((suspect) => <li key={suspect.key}>{suspect.words} <span>{likelihoodWords(suspect.likelihood)}</span></li>)}</ul>
        </details>
      )}
    </>
  )
}
