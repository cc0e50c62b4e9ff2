import { Check, Copy } from 'lucide-react'
import { useState } from 'react'
import type { RoleLink } from '../../connection/api.ts'
import '../../controls/NumberField.css'
import './LinkCard.css'
import { roleWords } from './roleWords.ts'

/** One role's secret link, to copy. */
export function LinkCard({ link, action }: { readonly link: RoleLink; readonly action?: React.ReactNode }) {
  const [copied, setCopied] = useState(false)

  async function copy(): Promise<void> {
    try {
      await navigator.clipboard.writeText(link.url)
      setCopied(true)
    } catch {
      // Without a secure context there is no clipboard; the field beside holds the link, selected on focus.
      setCopied(false)
    }
  }

  return (
    <div className="link-card">
      <div className="link-card-words">
        <strong className="link-card-role">{link.role}</strong>
        <span className="link-card-may">{roleWords[link.role]}</span>
      </div>
      <div className="link-card-row">
        <input
          className="number-field-input link-card-url"
          aria-label={`The ${link.role}'s link`}
          readOnly
          value={link.url}
          onFocus={(event) => event.currentTarget.select()}
        />
        <button type="button" className="button button-lined" aria-label={`Copy the ${link.role}'s link`} onClick={() => void copy()}>
          {copied ? <Check size={15} aria-hidden /> : <Copy size={15} aria-hidden />}
          {copied ? 'Copied' : 'Copy'}
        </button>
        {action}
      </div>
    </div>
  )
}
