import { useState, type ReactElement } from 'react'
import { renameJob } from '../../../shared-core/plan/edits/job.ts'
import { Choice } from '../../controls/Choice.tsx'
import { TextField } from '../../controls/TextField.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { usePerform } from '../../session/usePerform.ts'
import { themes, useTheme } from '../../theme/useTheme.ts'
import { pictureFile } from '../../frame/picture/savePictures.ts'
import { ask } from '../../session/pageStore.ts'
import { chooseFile, giveFile, offerJobFile, saveJobFile } from '../dialogs/jobFile.ts'
import './JobWork.css'

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
  const lookId = useBoard((board) => board.lookId)
  const lightIds = useBoard((board) => board.prediction.lights).map(({ id }) => id)
  const [saving, setSaving] = useState(false)
  const [trouble, setTrouble] = useState('')

  async function savePictures(soloLightIds: readonly (string | null)[]): Promise<void> {
    setSaving(true)
    setTrouble('')
    try {
      for (const soloLightId of soloLightIds) {
        const { fileName, png } = await pictureFile(plan, lookId, soloLightId)
        giveFile(png, fileName)
      }
    } catch (error) {
      setTrouble(`The picture could not be saved. ${error instanceof Error ? error.message : ''}`)
    } finally {
      setSaving(false)
    }
  }

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
      <div className="job-work-buttons">
        <button type="button" className="button button-lined" disabled={saving} onClick={() => void savePictures([null])}>
          Save the Frame
        </button>
        <button type="button" className="button button-lined" disabled={saving || lightIds.length === 0} onClick={() => void savePictures(lightIds)}>
          Save the Singles
        </button>
      </div>
      {trouble !== '' && <p role="alert">{trouble}</p>}
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
