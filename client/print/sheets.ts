import { Book } from './book.ts'
import { lookPages } from './lookPages.ts'
import type { Letters, Paper } from './paper.ts'
import type { PrintJob } from './printJob.ts'
import { standPages } from './standPages.ts'

/** All pages of a print: of each look one page, then one a stand. */
export function sheetsOf(job: PrintJob, letters: Letters): readonly Paper[] {
  const book = new Book(job, letters)
  for (const look of job.looks) {
    lookPages(book, look)
    standPages(book, look)
  }
  return book.finished()
}
