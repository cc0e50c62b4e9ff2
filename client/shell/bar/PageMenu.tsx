import { Popover, PopoverClose } from '../../controls/Popover.tsx'
import { ask, type Asking } from '../../session/pageStore.ts'
import './PageMenu.css'

/** A page over the board, as a menu offers it. */
export interface MenuPage {
  readonly opens: Asking
  readonly title: string
  readonly words: string
}

interface PageMenuProps {
  /** On the button. */
  readonly word: string
  readonly label: string
  readonly pages: readonly MenuPage[]
}

/** Pages that belong together, behind one word of the top bar. */
export function PageMenu({ word, label, pages }: PageMenuProps) {
  return (
    <Popover
      label={label}
      trigger={
        <button type="button" className="button">
          {word}
        </button>
      }
    >
      <ul className="page-menu">
        {pages.map((page) => (
          <li key={page.title}>
            <PopoverClose asChild>
              <button type="button" className="button page-menu-entry" onClick={() => ask(page.opens)}>
                <Offer {...page} />
              </button>
            </PopoverClose>
          </li>
        ))}
      </ul>
    </Popover>
  )
}

/** The same for a phone's sheet, all in sight. */
export function PageMenuList({ pages }: { readonly pages: readonly MenuPage[] }) {
  return (
    <ul className="page-menu">
      {pages.map((page) => (
        <li key={page.title}>
          <button type="button" className="button button-lined page-menu-entry" onClick={() => ask(page.opens)}>
            <Offer {...page} />
          </button>
        </li>
      ))}
    </ul>
  )
}

function Offer({ title, words }: MenuPage) {
  return (
    <>
      <span>{title}</span>
      <span className="page-menu-words">{words}</span>
    </>
  )
}
