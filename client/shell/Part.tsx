import { Component, type ReactNode } from 'react'
import './Part.css'

interface Props {
  /** "The floor" */
  readonly name: string
  readonly children: ReactNode
}

interface State {
  readonly trouble: string | null
}

/** One part of the board behind a net of its own: a fault in it leaves the others standing. */
export class Part extends Component<Props, State> {
  override state: State = { trouble: null }

  static getDerivedStateFromError(error: unknown): State {
    return { trouble: error instanceof Error ? error.message : String(error) }
  }

  override render(): ReactNode {
    if (this.state.trouble === null) return this.props.children
    return (
      <div className="part-broken" role="alert">
        <p>{this.props.name} broke. The fault is ours; the plan is safe, and the rest of the board goes on.</p>
        <p className="part-broken-trouble">{this.state.trouble}</p>
        <div>
          <button type="button" className="button button-lined" onClick={() => this.setState({ trouble: null })}>
            Draw it again
          </button>
          <button type="button" className="button" onClick={() => location.reload()}>
            Load the page again
          </button>
        </div>
      </div>
    )
  }
}
