import { Download, Printer } from 'lucide-react'
import { useEffect, useMemo, useState } from 'react'
import { Choice } from '../controls/Choice.tsx'
import { FullPage } from '../controls/FullPage.tsx'
import { useNotesStore } from '../notes/useNotes.ts'
import { useRig } from '../rig/useRig.ts'
import { fileStem } from '../kit/fileStem.ts'
import { giveFile } from '../shell/dialogs/jobFile.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { fontFiles } from './fontFiles.ts'
import { keepFormat, keptFormat } from './formatKept.ts'
import { withoutPictures, withPictures, type LookToPrint } from './gather.ts'
import { keepDraft } from './keepDraft.ts'
import { FORMATS, type FormatId, type Letters } from './paper.ts'
import type { FontFiles, Press } from './pdf.ts'
import type { PrintJob } from './printJob.ts'
import { sheetsOf } from './sheets.ts'
import { momentWords, usePrintable, type Printable } from './usePrintable.ts'
import './print.css'

type Version = 'locked' | 'now'

/** The library that writes PDFs is larger than the board: it comes when a print is wanted. */
const openPress = async (files: FontFiles): Promise<Press> => (await import('./pdf.ts')).openPress(files)

/** What goes on paper: which looks, as they were locked or as they are, on which paper. */
export function PrintPage({ onClose }: { readonly onClose: () => void }) {
  const printable = usePrintable()
  const lookHere = useBoard((board) => board.lookId)
  const units = useBoard((board) => board.units)
  const isLive = useBoard((board) => board.connection.state === 'live')
  const [chosen, setChosen] = useState<ReadonlySet<string>>(() => new Set([lookHere]))
  const [versions, setVersions] = useState<Readonly<Record<string, Version>>>({})
  const [format, setFormat] = useState<FormatId>(() => keptFormat(units))
  const isLocked = (one: Printable): boolean => one.asLocked !== null && versions[one.lookId] !== 'now'
  const toPrint = printable.filter(({ lookId }) => chosen.has(lookId)).map((one) => (isLocked(one) ? one.asLocked! : one.asNow))
  const { count, make, doing, trouble } = usePrint(toPrint, format)
  const isDraft = toPrint.some(({ state }) => state.lockNumber === null)

  return (
    <FullPage onClose={onClose} title="Print" words="One page for each look and one for each stand, safe in black and white. The marks in the corners open what differs since.">
      <div className="page-column print-page">
        <section className="page-panel print-card" aria-label="Looks to print">
          <ul className="print-looks">
            {printable.map((one) => (
              <li key={one.lookId} className="print-look">
                <label className="print-look-name">
                  <input
                    type="checkbox"
                    checked={chosen.has(one.lookId)}
                    onChange={(event) => setChosen(turned(chosen, one.lookId, event.currentTarget.checked))}
                  />
                  <span>{one.name}<span className="page-soft">{stateWords(one)}</span></span>
                </label>
                {one.asLocked !== null && one.changeCount !== 0 && chosen.has(one.lookId) && (
                  <Choice<Version>
                    label={`Which state of ${one.name}`} labelHidden
                    value={isLocked(one) ? 'locked' : 'now'}
                    options={[{ value: 'locked', label: `As in lock ${one.lock!.lock.number}` }, { value: 'now', label: 'As it is now' }]}
                    onChoose={(version) => setVersions({ ...versions, [one.lookId]: version })}
                  />
                )}
              </li>
            ))}
          </ul>
        </section>
        <section className="page-panel print-card print-do" aria-label="Paper">
          <Choice<FormatId>
            label="Paper" value={format} options={(['a4', 'letter'] as const).map((value) => ({ value, label: FORMATS[value].name }))}
            onChoose={(next) => { setFormat(next); keepFormat(next) }}
          />
          <p role="status" className="print-count">{doing ?? (trouble !== '' && count === null ? '' : countWords(toPrint.length, count))}</p>
          <div className="print-buttons">
            <button type="button" className="button button-main" disabled={count === null || doing !== null} onClick={() => void make('save')}>
              <Download size={16} aria-hidden /> Save PDF
            </button>
            <button type="button" className="button button-lined" disabled={count === null || doing !== null} onClick={() => void make('print')}>
              <Printer size={16} aria-hidden /> Print
            </button>
          </div>
          {isDraft && (
            <p className="page-soft">
              A draft says so on every page. {isLive ? 'Its state is kept as a “That one”, so that a scan can say in words what differs.' : 'Without a network a later scan can say which stands differ, but not how.'}
            </p>
          )}
          {trouble !== '' && <p role="alert">{trouble}</p>}
        </section>
      </div>
    </FullPage>
  )
}

interface Printing {
  /** Pages that it will be; null while that is found out, and where nothing is chosen. */
  readonly count: number | null
  readonly make: (how: 'save' | 'print') => Promise<void>
  /** What is being done, in words. */
  readonly doing: string | null
  readonly trouble: string
}

function usePrint(toPrint: readonly LookToPrint[], format: FormatId): Printing {
  const board = useBoardStore()
  const notes = useNotesStore()
  const units = useBoard((state) => state.units)
  const title = useBoard((state) => state.plan.title)
  const triggers = useRig(({ rig }) => rig.triggers)
  const { letters, trouble: noLetters } = useLetters()
  const [doing, setDoing] = useState<string | null>(null)
  const [trouble, setTrouble] = useState('')
  const looks = useMemo(() => toPrint.map((one) => withoutPictures(one, triggers)), [toPrint, triggers])
  const { jobId, name } = notes.getState().seat
  const jobOf = (ready: PrintJob['looks'], printedWords: string): PrintJob => ({
    format, units, jobId, jobTitle: title, origin: location.origin, printedWords, looks: ready,
  })
  const count = letters === null || looks.length === 0 ? null : sheetsOf(jobOf(looks, name), letters).length

  async function make(how: 'save' | 'print'): Promise<void> {
    setTrouble('')
    // Opened at once: later the browser takes it for a window nobody asked for.
    const shown = how === 'print' ? open('', '_blank') : null
    try {
      setDoing('Drawing the pictures')
      const ready = []
      for (const look of looks) ready.push(await withPictures(look, units))
      setDoing('Laying out the pages')
      const job = jobOf(ready, `${momentWords(Date.now())} by ${name}`)
      const press = await openPress(await fontFiles())
      const pdf = new Blob([new Uint8Array(await press.print(sheetsOf(job, press.letters), `${title}, set day`))], { type: 'application/pdf' })
      keepDraft(toPrint, board.getState(), notes.getState())
      if (shown === null) giveFile(pdf, `${fileStem(title)}, ${ready.map(({ look }) => look.name).join(', ').slice(0, 60)}.pdf`)
      else shown.location.href = URL.createObjectURL(pdf)
    } catch (error) {
      shown?.close()
      setTrouble(error instanceof Error ? error.message : 'The pages could not be made.')
    } finally {
      setDoing(null)
    }
  }
  return { count, make, doing, trouble: trouble || noLetters }
}

/** The letters that the pages are measured with; null until they are here, and where they cannot be had, with the reason. */
function useLetters(): { readonly letters: Letters | null; readonly trouble: string } {
  const [letters, setLetters] = useState<Letters | null>(null)
  const [trouble, setTrouble] = useState('')
  useEffect(() => {
    let isWanted = true
    fontFiles().then(openPress).then(
      (press) => isWanted && setLetters(press.letters),
      () => isWanted && setTrouble('What lays out the pages is not on this device yet, and there is no network to fetch it. Open this page once with a network.'),
    )
    return () => { isWanted = false }
  }, [])
  return { letters, trouble }
}

function turned(chosen: ReadonlySet<string>, lookId: string, on: boolean): ReadonlySet<string> {
  const next = new Set(chosen)
  if (on) next.add(lookId)
  else next.delete(lookId)
  return next
}

function countWords(looks: number, count: number | null): string {
  if (looks === 0) return 'No look is chosen'
  return count === null ? 'Counting the pages' : `${count} ${count === 1 ? 'page' : 'pages'}`
}

function stateWords({ lock, asLocked, changeCount }: Printable): string {
  if (lock === null) return 'Draft, not locked'
  if (asLocked === null) return `Lock ${lock.lock.number} cannot be had here: printed as a draft`
  return changeCount === 0 ? `Lock ${lock.lock.number}, unchanged` : `Lock ${lock.lock.number}; ${changeCount} ${changeCount === 1 ? 'change' : 'changes'} since`
}
