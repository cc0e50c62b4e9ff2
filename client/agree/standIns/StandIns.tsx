import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { FullPage } from '../../controls/FullPage.tsx'
import { LookCanvas } from '../../frame/picture/LookCanvas.tsx'
import { useElementSize } from '../../frame/useElementSize.ts'
import { useBoard } from '../../session/useBoard.ts'
import { useSeat } from '../../session/useSeat.ts'
import { markStandInsSeen, STAND_INS_SEEN_WORDS, useStandInsSeen } from './standInsSeen.ts'
import { useStandInLines } from './useStandInLines.ts'
import { variantsOf, type Variant } from './variants.ts'
import './StandIns.css'

/** The look on other skin and hair: same light, same camera, same exposure. */
export function StandIns({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const seatId = useSeat()?.seatId ?? ''
  const rows = useMemo(() => variantsOf(plan, lookId), [plan, lookId])
  const lines = useStandInLines(plan, lookId)
  const state = useStandInsSeen(seatId, plan, lookId)
  const look = plan.looks[lookId]
  const seenKeys = useRef(new Set<string>())
  const wanted = rows.upper.length + rows.lower.length

  useEffect(() => {
    seenKeys.current = new Set()
  }, [rows])
  const onSeen = useCallback((key: string) => {
    seenKeys.current.add(key)
    if (seenKeys.current.size === wanted) void markStandInsSeen(seatId, plan, lookId)
  }, [wanted, seatId, plan, lookId])

  if (look === undefined) return null
  const ratio = look.camera.sensorHeightMillimetres / look.camera.sensorWidthMillimetres
  const cells = { lookId, ratio, lines: lines.found, trouble: lines.trouble, onSeen }
  return (
    <FullPage
      onClose={onClose} title={`Stand-ins · ${look.name}`}
      words="Same light, camera and exposure. Words say what differs from the cast as planned; of dewy skin, from the same skin matt."
      tools={<p role="status" className="stand-ins-state">{STAND_INS_SEEN_WORDS[state]}</p>}
    >
      <div className="stand-ins">
        <Row label="The cast, five skins matt, dark hair" variants={rows.upper} {...cells} />
        <Row label="The cast, five skins dewy, light hair" variants={rows.lower} {...cells} />
      </div>
    </FullPage>
  )
}

interface Shared {
  readonly lookId: string
  readonly ratio: number
  readonly lines: Readonly<Record<string, readonly string[]>> | null
  readonly trouble: string
  readonly onSeen: (key: string) => void
}

function Row({ label, variants, ...shared }: Shared & { readonly label: string; readonly variants: readonly Variant[] }) {
  return (
    // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it scrolls sideways on a phone, and has to by keys, too
    <ul className="stand-ins-row" aria-label={label} tabIndex={0}>
      {variants.map((variant) => <Cell key={variant.key} variant={variant} {...shared} />)}
    </ul>
  )
}

function Cell({ variant, lookId, ratio, lines, trouble, onSeen }: Shared & { readonly variant: Variant }) {
  const { key, words, plan } = variant
  const box = useRef<HTMLDivElement>(null)
  const width = Math.round(useElementSize(box)?.widthPixels ?? 0)
  const place = useRef<HTMLLIElement>(null)
  const [drawnOf, setDrawnOf] = useState<typeof plan | null>(null)
  const onDrawn = useCallback(() => setDrawnOf(plan), [plan])

  useEffect(() => {
    if (drawnOf !== plan || place.current === null) return
    const watch = new IntersectionObserver(([entry]) => entry?.isIntersecting === true && onSeen(key), { threshold: 0.6 })
    watch.observe(place.current)
    return () => watch.disconnect()
  }, [drawnOf, plan, key, onSeen])

  const said = key === 'own' ? [] : (lines?.[key] ?? [trouble === '' ? '…' : 'no words here'])
  return (
    <li ref={place} className="stand-in" data-stand-in={key}>
      <div ref={box} className="stand-in-picture" style={{ aspectRatio: String(1 / ratio) }}>
        {width > 0 && (
          <LookCanvas
            plan={plan} lookId={lookId} onDrawn={onDrawn} description={`The look on a stand-in: ${words}`}
            widthPixels={width} heightPixels={Math.round(width * ratio)}
          />
        )}
      </div>
      <p className="stand-in-name">{words}</p>
      {said.map((line) => <p key={line} className="stand-in-line">{line}</p>)}
    </li>
  )
}
