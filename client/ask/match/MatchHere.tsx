import { lazy, Suspense, useState } from 'react'

const MatchReference = lazy(async () => ({ default: (await import('./MatchReference.tsx')).MatchReference }))

/** Matching a reference on an area, once it is asked for. */
export function MatchHere({ areaId }: { readonly areaId: string }) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <section className="match-here" aria-label="Match a reference">
      <button type="button" className="button button-lined" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>
        Match a reference
      </button>
      {isOpen && (
        <Suspense fallback={null}>
          <MatchReference areaId={areaId} />
        </Suspense>
      )}
    </section>
  )
}
