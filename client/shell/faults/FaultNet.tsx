import { Component, type ReactNode } from 'react'

interface Props {
  /** What stands in place of the children once one of them has thrown. `again` puts them back. */
  readonly broken: (trouble: string, again: () => void) => ReactNode
  readonly children: ReactNode
}

interface State {
  readonly trouble: string | null
}

/** Catches what its children throw while they are drawn, so that what stands beside it goes on. */
export class FaultNet extends Component<Props, State> {
  override state: State = { trouble: null }

  static getDerivedStateFromError(error: unknown): State {
    return { trouble: error instanceof Error ? error.message : String(error) }
  }

  override render(): ReactNode {
    const { trouble } = this.state
    if (trouble === null) return this.props.children
    return this.props.broken(trouble, () => this.setState({ trouble: null }))
  }
}
