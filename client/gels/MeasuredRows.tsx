import { useId, useState } from 'react'
import { capital } from '../../shared-core/plan/capital.ts'
import { parseGelRows, type RowProblem } from '../../shared-core/spectra/gel/parseRows.ts'
import type { GelRow } from '../../shared-core/spectra/gel/rows.ts'

interface MeasuredRowsProps {
  /** Rows read so far. */
  readonly rows: number
  readonly onRows: (rows: readonly GelRow[] | null) => void
}

const LARGEST_BYTES = 500_000

/** A sheet's own measurement, pasted or dropped: wavelength and transmittance, line by line. */
export function MeasuredRows({ rows, onRows }: MeasuredRowsProps) {
  const [text, setText] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const [remarks, setRemarks] = useState('')
  const fieldId = useId()
  const wordsId = useId()

  function read(next: string): void {
    setText(next)
    const parsed = parseGelRows(next)
    setProblem(parsed.ok || next.trim() === '' ? null : problemsInWords(parsed.problems))
    setRemarks(parsed.ok ? parsed.remarks.map((remark) => `, ${remark}`).join('') : '')
    onRows(parsed.ok ? parsed.rows : null)
  }

  async function readFile(file: File | undefined): Promise<void> {
    if (!file) return
    if (file.size > LARGEST_BYTES) return setProblem('That file is too large for a table of a sheet.')
    read(await file.text())
  }

  return (
    <div className="measured-rows">
      <label htmlFor={fieldId} className="number-field-label">
        Paste or drop a table: nanometres, share let through
      </label>
      <textarea
        id={fieldId}
        className="number-field-input measured-rows-text"
        rows={5}
        spellCheck={false}
        value={text}
        placeholder={'400, 0.02\n410, 0.03\n420, 0.05'}
        aria-describedby={wordsId}
        aria-invalid={problem !== null}
        onChange={(event) => read(event.currentTarget.value)}
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault()
          event.stopPropagation()
          void readFile(event.dataTransfer.files[0])
        }}
      />
      <p id={wordsId} className={problem === null ? 'own-sheet-words' : 'number-field-problem'}>
        {problem ?? (rows > 0 ? `${rows} rows read${remarks}.` : 'Shares or percent; commas, semicolons, tabs or spaces.')}
      </p>
      <label className="button button-lined measured-rows-file">
        Choose a file
        <input type="file" className="heard" accept=".csv,.txt,.tsv,text/csv,text/plain" onChange={(event) => void readFile(event.currentTarget.files?.[0])} />
      </label>
    </div>
  )
}

/** The first of what is wrong, with its line, and how much else there is. */
function problemsInWords([first, ...others]: readonly RowProblem[]): string {
  if (first === undefined) return ''
  const words = first.line === 0 ? capital(first.text) : `Line ${first.line}: ${first.text}`
  return `${words}${others.length > 0 ? ` (and ${others.length} more)` : ''}.`
}
