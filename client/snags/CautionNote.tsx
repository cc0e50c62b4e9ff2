import type { Caution } from '../../shared-core/predict/caution.ts'
import './SnagList.css'

/** The usual care, said calmly. */
export function CautionNote({ caution }: { readonly caution: Caution }) {
  return (
    <p className="caution">
      <span className="caution-word">Care</span>
      <span>{caution.message}</span>
    </p>
  )
}
