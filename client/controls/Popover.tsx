import { Popover as Radix } from 'radix-ui'
import type { ReactElement, ReactNode } from 'react'
import './Popover.css'

export interface PopoverProps {
  /** The button that opens it; its `aria-expanded` is seen to. */
  readonly trigger: ReactElement
  /** What it is, read out on opening. */
  readonly label: string
  readonly children: ReactNode
  readonly align?: 'start' | 'center' | 'end'
  readonly side?: 'top' | 'bottom'
  readonly open?: boolean
  readonly onOpen?: (open: boolean) => void
}

/** A small sheet that hangs on a button; Escape or a press outside shuts it and the focus goes back to the button. */
export function Popover({ trigger, label, children, align = 'start', side = 'bottom', open, onOpen }: PopoverProps) {
  const controlled = { ...(open === undefined ? {} : { open }), ...(onOpen === undefined ? {} : { onOpenChange: onOpen }) }
  return (
    <Radix.Root {...controlled}>
      <Radix.Trigger asChild>{trigger}</Radix.Trigger>
      <Radix.Portal>
        <Radix.Content className="popover" aria-label={label} align={align} side={side} sideOffset={6} collisionPadding={8}>
          {children}
        </Radix.Content>
      </Radix.Portal>
    </Radix.Root>
  )
}

/** Shuts the popover it stands in. */
export const PopoverClose = Radix.Close
