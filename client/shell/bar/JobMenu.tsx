import { Popover, PopoverClose } from '../../controls/Popover.tsx'
import { useBoard } from '../../session/useBoard.ts'
import { JobWork } from './JobWork.tsx'

/** The job as a whole: its file, and how this person sees it. */
export function JobMenu() {
  const title = useBoard((board) => board.plan.title)
  return (
    <Popover
      label={`The job ${title}`}
      align="end"
      trigger={
        <button type="button" className="button">
          Job
        </button>
      }
    >
      <JobWork closeAfter={(button) => <PopoverClose asChild>{button}</PopoverClose>} />
    </Popover>
  )
}
