export function StopLadder() {
  return <section aria-label="StopLadder" style={{ padding: '1rem', color: 'var(--ink-faint)' }}>StopLadder</section>
}
