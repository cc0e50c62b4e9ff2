import { Component, type ReactNode } from 'react'
import './CardPage.css'

interface Props {
  readonly children: ReactNode
}

interface State {
  readonly trouble: string | null
}

/** The last net: a fault of ours shows plain words and a way on, and never an empty page. */
export class ErrorBoundary extends Component<Props, State> {
  override state: State = { trouble: null }

  static getDerivedStateFromError(error: unknown): State {
    return { trouble: error instanceof Error ? error.message : String(error) }
  }

  override render(): ReactNode {
    if (this.state.trouble === null) return this.props.children
    return (
      <main className="card-page">
        <div className="card-page-card">
          <h1>Something here broke</h1>
          <p>
            The fault is ours, not yours. The shared plan is safe: it lives with the relay and in this device’s own copy, not in the part
            of the page that broke.
          </p>
          <p className="card-page-soft">What the page said: {this.state.trouble}</p>
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
}
