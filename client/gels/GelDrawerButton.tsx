import { Plus } from 'lucide-react'
import { useState } from 'react'
import { Dialog } from '../controls/Dialog.tsx'
import { GelDrawer } from './GelDrawer.tsx'

/** Opens the drawer to take a sheet for a light. */
export function GelDrawerButton({ lightId }: { readonly lightId: string }) {
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" className="button button-lined" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        <Plus size={15} aria-hidden /> Gel
      </button>
      <Dialog open={open} onClose={() => setOpen(false)} title="Gel Drawer" words="Each sheet as what it does to white and to this skin, through this light at its power now.">
        <GelDrawer lightId={lightId} onTaken={() => setOpen(false)} />
      </Dialog>
    </>
  )
}
