export function FloorView() {
  return <section aria-label="FloorView" style={{ padding: '1rem', color: 'var(--ink-faint)' }}>FloorView</section>
}
