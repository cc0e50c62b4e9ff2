import type { ReactNode } from 'react'
import '../door/CardPage.css'
import { FaultNet } from './FaultNet.tsx'

/** The last net: a fault of ours shows plain words and a way on, and never an empty page. */
export function ErrorBoundary({ children }: { readonly children: ReactNode }) {
  return <FaultNet broken={(trouble) => <BrokenPage trouble={trouble} />}>{children}</FaultNet>
}

function BrokenPage({ trouble }: { readonly trouble: string }) {
  return (
    <main className="card-page">
      <div className="card-page-card">
        <h1>Something here broke</h1>
        <p>
          The fault is ours, not yours. The shared plan is safe: it lives with the relay and in this device’s own copy, not in the part
          of the page that broke.
        </p>
        <p className="card-page-soft">What the page said: {trouble}</p>
        <div className="card-page-actions">
          <button type="button" className="button button-main" onClick={() => location.reload()}>
            Load the page again
          </button>
          <a className="button" href="/">
            To the first page
          </a>
        </div>
      </div>
    </main>
  )
}
