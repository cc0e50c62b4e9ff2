const fullStops = ['2.8', '4', '5.6', '8', '11', '16', '22']
const stepPixels = 84
const tenths = Array.from({ length: (fullStops.length - 1) * 10 + 1 }, (_, index) => index)

/** The first page's picture: a meter's scale with a strip of tape half a stop past f/8. */
export function StopScale() {
  const height = (fullStops.length - 1) * stepPixels
  const taking = 3.5 * stepPixels
  return (
    <svg className="stop-scale" viewBox={`-10 -30 190 ${height + 60}`} aria-hidden>
      {tenths.map((tenth) => {
        const y = (tenth * stepPixels) / 10
        const reach = tenth % 10 === 0 ? 46 : tenth % 5 === 0 ? 26 : 14
        return <path key={tenth} d={`M0 ${y}h${reach}`} stroke="var(--line-strong)" strokeOpacity={tenth % 10 === 0 ? 1 : 0.6} />
      })}
      {fullStops.map((stop, index) => (
        <text key={stop} x="60" y={index * stepPixels + 5} className="stop-scale-number">
          {stop}
        </text>
      ))}
      <rect x="-10" y={taking - 19} width="150" height="38" rx="1" fill="var(--tape)" transform={`rotate(-1.2 60 ${taking})`} />
      <text x="16" y={taking + 8} className="stop-scale-tape">
        f/8½
      </text>
    </svg>
  )
}
