import { useBoard } from '../session/useBoard.ts'

export function TopBar() {
  const title = useBoard((board) => board.plan.title)
  return <header style={{ padding: '0.75rem' }}>{title}</header>
}
