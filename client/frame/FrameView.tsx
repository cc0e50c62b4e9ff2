export function FrameView() {
  return <section aria-label="FrameView" style={{ padding: '1rem', color: 'var(--ink-faint)' }}>FrameView</section>
}
