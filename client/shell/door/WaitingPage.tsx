import type { ReactNode } from 'react'
import './CardPage.css'

/** A page that waits, or has come to an end, and says for what. */
export function WaitingPage({ words, children }: { readonly words: string; readonly children?: ReactNode }) {
  return (
    <main className="card-page">
      <div className="card-page-card">
        <p role="status" className="card-page-soft">
          {words}
        </p>
        {children !== undefined && <div className="card-page-actions">{children}</div>}
      </div>
    </main>
  )
}
