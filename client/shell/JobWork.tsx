import type { ReactElement } from 'react'
import { renameJob } from '../../shared-core/plan/edits/job.ts'
import { Choice } from '../controls/Choice.tsx'
import { TextField } from '../controls/TextField.tsx'
import { useBoard } from '../session/useBoard.ts'
import { usePerform } from '../session/usePerform.ts'
import { themes, useTheme } from '../theme/useTheme.ts'
import { chooseFile, offerJobFile, saveJobFile } from './jobFile.ts'
import './JobWork.css'
import { ask } from './pageStore.ts'

async function openFile(): Promise<void> {
  const file = await chooseFile()
  if (file !== null) await offerJobFile(file)
}

/** Everything about the job as a whole; stands in the laptop's menu and in the phone's sheet. */
export function JobWork({ closeAfter }: { readonly closeAfter: (button: ReactElement) => ReactElement }) {
  const plan = useBoard((board) => board.plan)
  const mayEdit = useBoard((board) => board.mayEdit)
  const units = useBoard((board) => board.units)
  const setUnits = useBoard((board) => board.setUnits)
  const [theme, setTheme] = useTheme()
  const perform = usePerform()
  return (
    <div className="job-work">
      <TextField label="Name of the job" value={plan.title} maxLength={120} disabled={!mayEdit} onDone={(title) => perform(renameJob(plan, title))} />
      <div className="job-work-buttons">
        {closeAfter(
          <button type="button" className="button button-lined" onClick={() => saveJobFile(plan)}>
            Save job file
          </button>,
        )}
        {closeAfter(
          <button type="button" className="button button-lined" disabled={!mayEdit} onClick={() => void openFile()}>
            Open job file
          </button>,
        )}
      </div>
      <Choice
        label="Your units"
        value={units}
        options={[
          { value: 'metric', label: 'Metres' },
          { value: 'imperial', label: 'Feet and inches' },
        ]}
        onChoose={setUnits}
      />
      <Choice label="Your room" value={theme} options={themes} onChoose={setTheme} />
      {closeAfter(
        <button type="button" className="button job-work-keys" onClick={() => ask({ kind: 'shortcuts' })}>
          Keyboard
          <kbd>?</kbd>
        </button>,
      )}
    </div>
  )
}
