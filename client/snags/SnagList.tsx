export function SnagList() {
  return <section aria-label="SnagList" style={{ padding: '1rem', color: 'var(--ink-faint)' }}>SnagList</section>
}
