import { showKitDrawer } from '../../panels/kit/kitDrawer.ts'
import { useBoard } from '../../session/useBoard.ts'
import { setSheet } from '../../session/pageStore.ts'
import { shutAsk } from '../askPanelStore.ts'

/** From asking for more to asking for less: opens what the look can be asked to do without, in place of Ask. */
export function WithoutButton() {
  const select = useBoard((board) => board.select)
  return (
    <button
      type="button"
      className="button without-from-ask"
      onClick={() => {
        shutAsk()
        showKitDrawer('without')
        select({ kind: 'kit' })
        setSheet('tall')
      }}
    >
      Do without…
    </button>
  )
}
