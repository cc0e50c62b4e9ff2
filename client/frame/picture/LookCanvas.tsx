import { useEffect, useId, useRef, useState } from 'react'
import type { Plan } from '../../../shared-core/plan/schema/plan.ts'
import { displaySpace } from './displaySpace.ts'
import { pictureDesk } from './pictureDesk.ts'

interface LookCanvasProps {
  readonly plan: Plan
  readonly lookId: string
  readonly widthPixels: number
  readonly heightPixels: number
  /** What it shows, for those who cannot see it. */
  readonly description: string
  /** Told once its picture is there. */
  readonly onDrawn?: () => void
}

/** Any look of any plan as a picture; the last one stays until the next is drawn. */
export function LookCanvas({ plan, lookId, widthPixels, heightPixels, description, onDrawn }: LookCanvasProps) {
  const slot = useId()
  const canvas = useRef<HTMLCanvasElement>(null)
  const [state, setState] = useState<'waiting' | 'drawn'>('waiting')
  const [trouble, setTrouble] = useState('')

  useEffect(() => {
    const desk = pictureDesk()
    if (desk === null) return
    let isWanted = true
    desk.order({
      slot, kind: 'proof', plan, lookId, width: widthPixels, height: heightPixels,
      soloLightId: null, coarse: false, view: 'picture', space: displaySpace(),
    }, ({ rgba, width, height, trouble: words }) => {
      if (!isWanted || canvas.current === null) return
      setTrouble(rgba === null ? words : '')
      if (rgba === null) return
      canvas.current.width = width
      canvas.current.height = height
      canvas.current.getContext('2d', { colorSpace: displaySpace() })?.putImageData(new ImageData(rgba, width, height, { colorSpace: displaySpace() }), 0, 0)
      setState('drawn')
      onDrawn?.()
    })
    return () => {
      isWanted = false
      desk.forget(slot)
    }
  }, [slot, plan, lookId, widthPixels, heightPixels, onDrawn])

  return (
    <>
      <canvas ref={canvas} className="look-canvas" data-picture={state} role="img" aria-label={description} />
      {trouble !== '' && <p className="look-canvas-trouble">{trouble}</p>}
    </>
  )
}
