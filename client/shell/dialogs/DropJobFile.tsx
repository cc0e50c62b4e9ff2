import { useEffect, useState, type ReactNode } from 'react'
import { useBoard } from '../../session/useBoard.ts'
import './DropJobFile.css'
import { offerJobFile } from './jobFile.ts'

/** Takes a job file dropped anywhere on the page. A page that did not would leave the board and show the file's text. */
export function DropJobFile({ children }: { readonly children: ReactNode }) {
  const mayEdit = useBoard((board) => board.mayEdit)
  const [over, setOver] = useState(false)

  useEffect(() => {
    const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes('Files') === true
    function onDragOver(event: DragEvent): void {
      if (!carriesFile(event)) return
      // Who takes a file for itself has said so already.
      setOver(!event.defaultPrevented)
      event.preventDefault()
    }
    function onDragLeave(event: DragEvent): void {
      if (event.relatedTarget === null) setOver(false)
    }
    function onDrop(event: DragEvent): void {
      if (!carriesFile(event)) return
      setOver(false)
      if (event.defaultPrevented) return
      event.preventDefault()
      const file = event.dataTransfer?.files[0]
      if (file !== undefined && mayEdit) void offerJobFile(file)
    }
    addEventListener('dragover', onDragOver)
    addEventListener('dragleave', onDragLeave)
    addEventListener('drop', onDrop)
    return () => {
      removeEventListener('dragover', onDragOver)
      removeEventListener('dragleave', onDragLeave)
      removeEventListener('drop', onDrop)
    }
  }, [mayEdit])

  return (
    <>
      {children}
      {over && (
        <p className="drop-job-file">{mayEdit ? 'Let go to open the job file' : 'You may not change this job, so its file cannot be opened here'}</p>
      )}
    </>
  )
}
