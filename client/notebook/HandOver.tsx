import { Download } from 'lucide-react'
import { useEffect, useState } from 'react'
import { FullPage } from '../controls/FullPage.tsx'
import { LookCanvas } from '../frame/picture/LookCanvas.tsx'
import { asShotKey } from '../../shared-core/rig/asShot.ts'
import { standingInOrder } from '../../shared-core/stands/standOrder.ts'
import { pictureHeight } from '../../shared-core/predict/pictureText.ts'
import { fileStem } from '../kit/fileStem.ts'
import { LookPick } from '../moves/LookPick.tsx'
import { usePinWords } from '../notes/pencil/usePinWords.ts'
import { useLocks, useThreads } from '../notes/useNotes.ts'
import { useRig, useRigStore } from '../rig/useRig.ts'
import { giveFile } from '../shell/dialogs/jobFile.ts'
import { looksInOrder } from '../session/looksInOrder.ts'
import { useBoard, useBoardStore } from '../session/useBoard.ts'
import { fetchWriters, handOverZip, type HandOverSaid } from './handOverZip.ts'
import { useStandPhotos, type StandPhoto } from './useStandPhotos.ts'
import './handOver.css'

const WHAT = [
  'The Frame as intended, and each light alone',
  'What is meant, place by place: the look, and what is a fault',
  'Recipe: white balance, white point, contrast',
  'Clean plates, and the plan as planned and as shot',
  'Who agreed to what, with the lock’s seal',
] as const

const PICTURE_WIDTH = 240

/** One folder for whoever retouches, weeks later, with the files alone. */
export function HandOver({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookHere = useBoard((board) => board.lookId)
  const [lookId, setLookId] = useState(lookHere)
  const asShot = useRig(({ rig }) => rig.asShot)
  const photos = useStandPhotos(lookId).all
  const { make, doing, done, trouble } = useHandOver(lookId, photos)
  const look = plan.looks[lookId]
  const standIds = look === undefined ? [] : standingInOrder(look).map(({ id }) => id)
  const stands = standIds.length
  const recorded = standIds.filter((id) => asShot[asShotKey(lookId, id)] !== undefined).length
  return (
    <FullPage onClose={onClose} title="Hand-over" words="One folder for retouch, made on this device, with or without a network.">
      <div className="page-column hand-page">
        <LookPick label="Look" value={lookId} options={looksInOrder(plan).map(([id, { name }]) => ({ value: id, label: name }))} onChoose={setLookId} />
        <section className="page-panel hand-card" aria-label="What is in it">
          {look !== undefined && (
            <div className="hand-picture">
              <LookCanvas plan={plan} lookId={lookId} widthPixels={PICTURE_WIDTH} heightPixels={pictureHeight(look, PICTURE_WIDTH)} description={`The Frame of ${look.name}`} />
            </div>
          )}
          <div className="hand-what">
            <ul>
              {WHAT.map((words) => <li key={words}>{words}</li>)}
              {photos.length > 0 && <li>{photos.length} {photos.length === 1 ? 'photograph' : 'photographs'} of the stands at wrap</li>}
            </ul>
            <p className="page-soft hand-soft">
              {recorded === 0 ? 'Nothing was recorded as shot yet: the folder will say so.'
                : recorded < stands ? `${recorded} of ${stands} stands recorded as shot; of the others the folder says that nobody did.` : 'Every stand was recorded as shot.'}
            </p>
            <button type="button" className="button button-main hand-make" aria-disabled={doing !== '' || look === undefined} onClick={() => doing === '' && look !== undefined && void make()}>
              <Download size={20} aria-hidden /> Make the folder
            </button>
            <p role="status" className="page-soft hand-soft">{doing || done}</p>
            {trouble !== '' && <p role="alert" className="hand-trouble">{trouble}</p>}
          </div>
        </section>
      </div>
    </FullPage>
  )
}

function useHandOver(lookId: string, photos: readonly StandPhoto[]) {
  const board = useBoardStore()
  const rig = useRigStore()
  const threads = useThreads()
  const locks = useLocks()
  const pinWords = usePinWords()
  const [doing, setDoing] = useState('')
  const [done, setDone] = useState('')
  const [trouble, setTrouble] = useState('')
  // Ahead of the press, for a page that loses its network in between. What is wrong with it is said when it is wanted.
  useEffect(() => void fetchWriters().catch(() => undefined), [])

  function said(): HandOverSaid {
    const { plan, units } = board.getState()
    return {
      plan, lookId, units, photos, asShot: rig.getState().rig.asShot,
      notes: threads.filter(({ note }) => note.lookId === lookId).flatMap(({ note, replies }) => {
        const where = pinWords(note.pin, lookId)
        return [{ by: note.by.name, words: note.text, where }, ...replies.map(({ reply }) => ({ by: reply.by.name, words: reply.text, where: `${where}, in answer` }))]
      }),
      locks: locks.filter(({ lock }) => lock.lookId === lookId).reverse().map(({ lock, supersededBy, chainEnd, yeses }) => ({
        number: lock.number, by: lock.by.name, atMs: lock.by.atMs, conditions: lock.conditions, stands: supersededBy === null, chainEnd,
        yeses: yeses.map(({ yes }) => ({ by: yes.by.name, words: yes.words, atMs: yes.by.atMs })),
      })),
    }
  }

  async function make(): Promise<void> {
    setTrouble('')
    setDone('')
    setDoing('Drawing the pictures …')
    try {
      const parts = said()
      const { zip, missingPhotographs: missing } = await handOverZip(parts, Date.now(), setDoing)
      giveFile(zip, `${fileStem(`${parts.plan.title}, ${parts.plan.looks[lookId]!.name}`)}, hand-over.zip`)
      setDone(`The folder of “${parts.plan.looks[lookId]!.name}” is made: look among this device’s downloads.`)
      if (missing > 0) setTrouble(`${missing === 1 ? 'One photograph could' : `${missing} photographs could`} not be had and ${missing === 1 ? 'is' : 'are'} not in it; the folder names ${missing === 1 ? 'it' : 'them'}. Make it again with a network.`)
    } catch (fault) {
      setTrouble(fault instanceof Error ? fault.message : 'The folder could not be made.')
    } finally {
      setDoing('')
    }
  }

  return { make, doing, done, trouble }
}
