import { Dialog as Radix } from 'radix-ui'
import { X } from 'lucide-react'
import type { ReactNode } from 'react'
import './FullPage.css'
import './pageParts.css'

interface FullPageProps {
  readonly onClose: () => void
  readonly title: string
  /** One sentence under the title: what is seen here, and how. */
  readonly words?: string
  /** In the head, beside the title. */
  readonly tools?: ReactNode
  readonly children: ReactNode
}

/** A whole page over the board, on the grey that colour is judged on. Escape leaves it, and the focus goes back. */
export function FullPage({ onClose, title, words, tools, children }: FullPageProps) {
  return (
    <Radix.Root open onOpenChange={(next) => !next && onClose()}>
      <Radix.Portal>
        <Radix.Content
          className="full-page"
          // A field that Escape leaves says so; the page stays then.
          onEscapeKeyDown={(event) => event.target instanceof Element && event.target.closest('[data-own-escape]') !== null && event.preventDefault()}
          {...(words === undefined ? { 'aria-describedby': undefined } : {})}
        >
          <header className="full-page-head">
            <div className="full-page-words">
              <Radix.Title className="full-page-title">{title}</Radix.Title>
              {words !== undefined && <Radix.Description className="full-page-description">{words}</Radix.Description>}
            </div>
            {tools}
            <Radix.Close className="button button-bare" aria-label="Close">
              <X size={20} aria-hidden />
            </Radix.Close>
          </header>
          <div className="full-page-body">{children}</div>
        </Radix.Content>
      </Radix.Portal>
    </Radix.Root>
  )
}
