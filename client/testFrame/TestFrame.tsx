import { useMemo, useState } from 'react'
import { align } from '../../shared-core/testFrame/align.ts'
import { landmarksOf, type Landmark } from '../../shared-core/testFrame/landmarks.ts'
import { Choice } from '../controls/Choice.tsx'
import { FullPage } from '../controls/FullPage.tsx'
import { useBoard } from '../session/useBoard.ts'
import { Compared } from './Compared.tsx'
import { Findings } from './Findings.tsx'
import { readPhotograph, turnedRight, type Photograph } from './photograph.ts'
import { PointsOnPhoto } from './PointsOnPhoto.tsx'
import type { ThreePoints } from './testFrameOrders.ts'
import { whatDiffers } from './testFrameWords.ts'
import { useTestFrame } from './useTestFrame.ts'
import './testFrame.css'

type Way = 'points' | 'beside' | 'wipe'

/** A photograph against the prediction: laid on by three points, seen at the same size, and the likeliest cause named. */
export function TestFrame({ onClose }: { readonly onClose: () => void }) {
  const plan = useBoard((board) => board.plan)
  const lookId = useBoard((board) => board.lookId)
  const look = plan.looks[lookId]
  const landmarks = useMemo(() => (look ? landmarksOf(look) : null), [look])
  const { picture, tried, verdict, isJudging, trouble, judge, forget } = useTestFrame(plan, lookId)
  const [photo, setPhoto] = useState<Photograph | null>(null)
  const [points, setPoints] = useState<ThreePoints | null>(null)
  const [way, setWay] = useState<Way>('points')
  const [unread, setUnread] = useState('')
  const aspect = look ? look.camera.sensorWidthMillimetres / look.camera.sensorHeightMillimetres : 1
  const laid = useMemo(() => (landmarks && points && photo ? align(landmarks, aspect, points, photo.bytes.height) : null), [landmarks, points, photo, aspect])
  const alignment = laid !== null && 'alignment' in laid ? laid.alignment : null
  const differences = useMemo(() => (verdict ? whatDiffers(verdict.differences) : []), [verdict])

  function lay(next: Photograph): void {
    setPhoto(next)
    setPoints(landmarks && firstPoints(next, landmarks, aspect))
    setWay('points')
    forget()
  }

  async function take(file: File | undefined): Promise<void> {
    if (file === undefined) return
    try {
      setUnread('')
      lay(await readPhotograph(file))
    } catch (error) {
      setUnread(error instanceof Error ? error.message : String(error))
    }
  }

  const chooser = (
    <label className={photo ? 'button button-lined tf-file' : 'button button-main tf-file'}>
      <input type="file" className="heard" accept="image/*,.dng,.tif,.tiff,.arw,.cr2,.cr3,.nef,.raf,.orf,.rw2" onChange={({ target }) => {
        void take(target.files?.[0])
        target.value = ''
      }} />
      {photo ? 'Another photograph' : 'Choose a photograph'}
    </label>
  )
  const shownWay: Way = alignment !== null && picture !== null ? way : 'points'
  const refused = laid !== null && 'refused' in laid ? laid.refused : ''

  return (
    <FullPage onClose={onClose} title={`Test frame · ${look?.name ?? ''}`} words="A photograph of the set beside the prediction. It stays on this device.">
      <div
        className="tf-page"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault()
          void take(event.dataTransfer.files[0])
        }}
      >
        <div className="tf-pictures">
          {photo === null || points === null || landmarks === null ? (
            <div className="tf-empty">
              <p>Choose the test frame, or drop it here: JPEG, PNG, WebP, or a raw file with its preview inside.</p>
              {chooser}
              <p className="tf-next-words">Then three points are laid on the face, and what differs from the plan is named, with the one thing to look at first.</p>
            </div>
          ) : shownWay === 'points' || alignment === null || picture === null ? (
            <PointsOnPhoto photo={photo} picture={picture} landmarks={landmarks} points={points} onPoints={(next) => {
              setPoints(next)
              forget()
            }} />
          ) : (
            <Compared way={shownWay} photo={photo} alignment={alignment} picture={picture} differences={differences} />
          )}
        </div>
        <div className="tf-panel">
          {unread !== '' && <p className="page-panel tf-card tf-trouble" role="alert">{unread}</p>}
          {photo !== null && points !== null && (
            <>
              <div className="page-panel">
                <Choice
                  label="What to see" labelHidden value={shownWay} onChoose={setWay}
                  options={[{ value: 'points', label: 'Points' }, { value: 'beside', label: 'Side by side' }, { value: 'wipe', label: 'Wipe' }]}
                />
              </div>
              {verdict === null && (
                <section className="page-panel tf-card" aria-label="Laying it on">
                  <p>Put each mark on its place: both pupils and the middle of the mouth.</p>
                  {alignment && <p className="page-soft">The points fit within {alignment.residualPercent.toFixed(1)} % of the Frame's height.</p>}
                  {(refused || trouble) !== '' && <p className="tf-trouble" role="alert">{refused || trouble}</p>}
                  <button type="button" className="button button-main" disabled={alignment === null || isJudging} onClick={() => {
                    judge(photo.bytes, points)
                    setWay('beside')
                  }}>
                    {isJudging ? 'Looking' : 'The points lie right'}
                  </button>
                </section>
              )}
              {verdict !== null && <Findings verdict={verdict} differences={differences} />}
            </>
          )}
          {tried !== null && trouble === '' && <p className="page-panel page-soft" role="status">{tried === 0 ? 'Drawing the prediction' : `Trying what may be otherwise: ${tried}`}</p>}
          {photo !== null && (
            <div className="page-panel tf-tools">
              {chooser}
              <button type="button" className="button" onClick={() => lay(turnedRight(photo))}>Turn right</button>
              <p className="page-soft">{photo.name}{photo.isPreview ? ', the preview inside' : ''}</p>
            </div>
          )}
        </div>
      </div>
    </FullPage>
  )
}

/** Where the face would be if the photograph were framed as the Frame is. */
function firstPoints({ bytes: { width, height } }: Photograph, landmarks: readonly Landmark[], aspect: number): ThreePoints {
  const frameHeight = Math.min(height, width / aspect)
  const [left, top] = [(width - frameHeight * aspect) / 2, (height - frameHeight) / 2]
  return landmarks.map(({ frameX, frameY }) => ({ x: left + frameX * frameHeight * aspect, y: top + frameY * frameHeight })) as unknown as ThreePoints
}
