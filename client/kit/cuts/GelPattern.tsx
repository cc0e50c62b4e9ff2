/** Hatching that tells the gels of a page apart without their colour: angle and distance go by the gel's place. */
export function HatchPattern({ id, index, colour }: { readonly id: string; readonly index: number; readonly colour: string }) {
  const apart = 18 + 8 * (index % 4)
  return (
    <pattern id={id} width={apart} height={apart} patternUnits="userSpaceOnUse" patternTransform={`rotate(${15 + 40 * index})`}>
      <rect width={apart} height={apart} fill={colour} />
      <line x1={0} y1={0} x2={0} y2={apart} stroke="#000" strokeOpacity={0.32} strokeWidth={index % 2 === 0 ? 3 : 6} />
      <line x1={apart / 2} y1={0} x2={apart / 2} y2={apart} stroke="#fff" strokeOpacity={0.22} strokeWidth={3} />
    </pattern>
  )
}

/** A patch of the gel as it is drawn on its sheets. */
export function GelPattern({ index, colour }: { readonly index: number; readonly colour: string }) {
  const id = `gel-patch-${index}`
  return (
    <svg className="gel-pattern" viewBox="0 0 120 60" aria-hidden>
      <defs>
        <HatchPattern id={id} index={index} colour={colour} />
      </defs>
      <rect width={120} height={60} fill={`url(#${id})`} />
    </svg>
  )
}
