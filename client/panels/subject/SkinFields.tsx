import { useMemo } from 'react'
import { formatAngle } from '../../../shared-core/plan/entry/camera.ts'
import { changeSubject } from '../../../shared-core/plan/edits/look.ts'
import type { Subject } from '../../../shared-core/plan/schema/look.ts'
import { Slider } from '../../controls/Slider.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePlanEdit } from '../../session/usePlanEdit.ts'
import { skinHex } from './skinHex.ts'
import { sheenWords, skinWords, undertoneWords } from './skinWords.ts'

const FAIREST_ITA = 65
const DEEPEST_ITA = -75

/** Depth from very fair to very deep, undertone and sheen; the tracks show the skin itself in plain daylight. */
export function SkinFields({ subject }: { readonly subject: Subject }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const edit = usePlanEdit()
  const { skinItaDegrees, skinUndertone, skinSheen } = subject
  const depthTrack = useMemo(() => track(DEEPEST_ITA, FAIREST_ITA, (ita) => skinHex(ita, skinUndertone)), [skinUndertone])
  const undertoneTrack = useMemo(() => track(-1, 1, (undertone) => skinHex(skinItaDegrees, undertone)), [skinItaDegrees])
  const hands = (key: 'skinItaDegrees' | 'skinUndertone' | 'skinSheen') => ({
    disabled: !mayEdit,
    onHold: (value: number) => edit.hold((plan, lookId) => changeSubject(plan, lookId, { [key]: value })),
    onDone: (value: number) => edit((plan, lookId) => changeSubject(plan, lookId, { [key]: value })),
  })

  return (
    <div className="panel-grid panel-sliders">
      <Slider
        label="Depth"
        value={skinItaDegrees}
        min={DEEPEST_ITA}
        max={FAIREST_ITA}
        step={1}
        format={(ita) => `${skinWords(ita)}, ITA ${formatAngle(Math.round(ita))}`}
        track={depthTrack}
        {...hands('skinItaDegrees')}
      />
      <Slider label="Undertone" value={skinUndertone} min={-1} max={1} step={0.05} format={undertoneWords} track={undertoneTrack} {...hands('skinUndertone')} />
      <Slider label="Sheen" value={skinSheen} min={0} max={1} step={0.05} format={sheenWords} {...hands('skinSheen')} />
    </div>
  )
}

const TRACK_STEPS = 8

function track(from: number, to: number, hexAt: (value: number) => string): string {
  const colours = Array.from({ length: TRACK_STEPS + 1 }, (_, i) => hexAt(from + ((to - from) * i) / TRACK_STEPS))
  return `linear-gradient(to right, ${colours.join(', ')})`
}
