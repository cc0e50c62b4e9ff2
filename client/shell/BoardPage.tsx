import { Announcer } from './Announcer.tsx'
import { Desk } from './Desk.tsx'
import { DropJobFile } from './DropJobFile.tsx'
import { Phone } from './Phone.tsx'
import { PageDialogs } from './PageDialogs.tsx'
import { useKeys } from './useKeys.ts'
import { useNarrow } from './useNarrow.ts'

/** The whole board: picture, instrument and room in a row; on a phone, three thumb-flips. */
export function BoardPage() {
  const narrow = useNarrow()
  useKeys()
  return (
    <DropJobFile>
      {narrow ? <Phone /> : <Desk />}
      <PageDialogs />
      <Announcer />
    </DropJobFile>
  )
}
