import { Dialog as Radix } from 'radix-ui'
import { X } from 'lucide-react'
import type { ReactNode } from 'react'
import './Dialog.css'

export interface DialogProps {
  readonly open: boolean
  readonly onClose: () => void
  readonly title: string
  /** One sentence under the title. */
  readonly words?: string
  readonly children?: ReactNode
  /** The buttons; the first of them is the quiet way out. */
  readonly actions?: ReactNode
}

/** A question or a list in the middle of the page; the rest waits behind it. */
export function Dialog({ open, onClose, title, words, children, actions }: DialogProps) {
  return (
    <Radix.Root open={open} onOpenChange={(next) => !next && onClose()}>
      <Radix.Portal>
        <Radix.Overlay className="dialog-veil" />
        <Radix.Content className="dialog" {...(words === undefined ? { 'aria-describedby': undefined } : {})}>
          <header className="dialog-head">
            <Radix.Title className="dialog-title">{title}</Radix.Title>
            <Radix.Close className="button button-bare" aria-label="Close">
              <X size={18} aria-hidden />
            </Radix.Close>
          </header>
          {words !== undefined && <Radix.Description className="dialog-words">{words}</Radix.Description>}
          {children !== undefined && <div className="dialog-body">{children}</div>}
          {actions !== undefined && <footer className="dialog-actions">{actions}</footer>}
        </Radix.Content>
      </Radix.Portal>
    </Radix.Root>
  )
}
