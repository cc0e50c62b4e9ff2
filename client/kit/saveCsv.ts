import { fileStem } from './fileStem.ts'
import { giveFile } from '../shell/dialogs/jobFile.ts'

/** Without this first character some spreadsheets take the text for another alphabet. */
const BYTE_ORDER_MARK = '\uFEFF'

/** Gives a table to the person as a file. */
export function saveCsv(text: string, jobTitle: string, what: string): void {
  giveFile(new Blob([BYTE_ORDER_MARK, text], { type: 'text/csv;charset=utf-8' }), `${fileStem(jobTitle)}, ${what}.csv`)
}
