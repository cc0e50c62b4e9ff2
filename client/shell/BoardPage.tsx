import { ClientFace } from '../agree/client/ClientFace.tsx'
import { usePlainWords } from '../agree/client/plainWords.ts'
import { LookWithLine } from '../agree/call/LookWithLine.tsx'
import { ReopenedLine } from '../agree/lock/ReopenedLine.tsx'
import { PencilHands } from '../notes/pencil/PencilHands.tsx'
import { Announcer } from './Announcer.tsx'
import { Banner } from './Banner.tsx'
import './BoardPage.css'
import { Desk } from './Desk.tsx'
import { DropJobFile } from './dialogs/DropJobFile.tsx'
import { Phone } from './Phone.tsx'
import { PageDialogs } from './dialogs/PageDialogs.tsx'
import { allKeys, plainKeys, useKeys } from './useKeys.ts'
import { phone, useMedia } from './useMedia.ts'

/** The whole board: picture, instrument and room in a row; on a phone, three thumb-flips; for a client, the picture in plain words. */
export function BoardPage() {
  const onPhone = useMedia(phone)
  const isPlain = usePlainWords()
  useKeys(isPlain ? plainKeys : allKeys)
  return (
    <DropJobFile>
      <div className="board-page">
        <Banner />
        <ReopenedLine />
        <LookWithLine />
        {isPlain ? <ClientFace /> : onPhone ? <Phone /> : <Desk />}
      </div>
      <PencilHands />
      <PageDialogs />
      <Announcer />
    </DropJobFile>
  )
}
