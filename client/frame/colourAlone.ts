import { clipChannels } from '../../shared-core/colour/camera.ts'
import { displayHex } from '../../shared-core/colour/display.ts'
import { xyzFromChannels } from '../../shared-core/colour/cameraMatrix.ts'
import type { Finish } from '../../shared-core/plan/schema/look.ts'
import type { AreaPrediction, Taking } from '../../shared-core/predict/prediction.ts'

const BLACK = '#000000'

/** What one light alone makes of an area on the display, `#rrggbb`: its channels clipped, developed and finished. */
export function colourAlone(area: AreaPrediction, lightId: string, taking: Taking, finish: Finish): string {
  const from = area.byLight.find((one) => one.lightId === lightId)
  if (!from) return BLACK
  return displayHex(xyzFromChannels(clipChannels(from.channels), taking.whiteBalanceKelvin), finish).hex
}
