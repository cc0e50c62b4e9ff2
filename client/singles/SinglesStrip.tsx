export function SinglesStrip() {
  return <section aria-label="SinglesStrip" style={{ padding: '1rem', color: 'var(--ink-faint)' }}>SinglesStrip</section>
}
