import { signedStops } from '../../ladder/areaNames.ts'
import { useBoard } from '../../session/useBoard.ts'
import '../answers.css'
import { useWithLooked } from './lookedSnag.ts'
import { SpillCure } from './SpillCure.tsx'
import './spill.css'

/** Who dilutes an area's own colour, in stops, loudest first; what silences a line that is too loud. */
export function SpillsHere({ areaId }: { readonly areaId: string }) {
  const spills = useBoard((board) => board.prediction.spills)
  const lights = useBoard((board) => board.prediction.lights)
  const snags = useWithLooked(useBoard((board) => board.prediction.snags))
  const here = spills.filter((spill) => spill.areaId === areaId).sort((a, b) => a.stopsUnder - b.stopsUnder)
  if (here.length === 0) return null
  const letterOf = (lightId: string) => lights.find(({ id }) => id === lightId)?.letter ?? '?'
  return (
    <section className="spill-here" aria-label="Spill here">
      <h3 className="answer-head">Spill</h3>
      {here.map(({ ownerLightId, diluterLightId, stopsUnder, thresholdStops }) => {
        const loud = snags.find(({ rule, about }) =>
          (rule === 'spill' || rule === 'second-colour') && about[0] === diluterLightId && about[1] === areaId)
        return (
          <div key={`${ownerLightId} ${diluterLightId}`} className="spill-cure">
            <p className="answer-words">
              {letterOf(diluterLightId)} lies {signedStops(-stopsUnder)} from {letterOf(ownerLightId)} here; {thresholdStops.toFixed(1)} under keeps the colour clean
              {loud ? '.' : ': quiet.'}
            </p>
            {loud && <SpillCure snagKey={loud.key} />}
          </div>
        )
      })}
    </section>
  )
}
