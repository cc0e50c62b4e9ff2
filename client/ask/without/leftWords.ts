import { colourWords } from '../../../shared-core/colour/hueWords.ts'
import type { AreaChange } from '../../../shared-core/ask/visibleChange.ts'
import { VISIBLE_STEP } from '../../../shared-core/ask/visibleChange.ts'
import { labOfXyz } from '../../../shared-core/colour/difference.ts'
import { linearFromHex, xyzFromLinear } from '../../../shared-core/spectra/srgb.ts'
import type { LookFound } from '../askOrders.ts'

/** A difference at which an area is another colour or tone at a glance (common practice, no source). */
const OTHER_AT_A_GLANCE = 10
/** Darker than this L* a picture says nothing. */
const BLACK_LIGHTNESS = 8

/** How much of a look is left, honestly: none, little, most or all of it. */
export function leftWords({ areas, stops }: Pick<LookFound, 'areas' | 'stops'>): string {
  const inWords = (count: number): string => `${count} of ${areas.length} areas`
  const seen = areas.filter(({ difference }) => difference >= VISIBLE_STEP).length
  const other = areas.filter(({ difference }) => difference >= OTHER_AT_A_GLANCE).length
  const words = areas.length > 0 && areas.every(({ to }) => labOfXyz(xyzOf(to)).l < BLACK_LIGHTNESS) ? 'Nothing is left: the picture is black.'
    : other * 2 > areas.length ? `Not much of the look is left: ${inWords(other)} are another colour or tone at a glance.`
      : seen === 0 ? 'Nobody would see the difference.'
        : `${inWords(seen)} look otherwise${other > 0 ? `, ${other} at a glance` : ''}.`
  return stops.length === 0 ? words : `${words} It cannot be worked as it stands.`
}

/** The areas one would see changed, the most changed first. */
export function areasLost(areas: readonly AreaChange[]): readonly AreaChange[] {
  return areas.filter(({ difference }) => difference >= VISIBLE_STEP).sort((a, b) => b.difference - a.difference)
}

/** "from violet to rose"; the one name where it keeps it. */
export function turnWords({ from, to }: AreaChange): string {
  const [was, is] = [colourWords(xyzOf(from)), colourWords(xyzOf(to))]
  return was === is ? `still ${is}` : `from ${was} to ${is}`
}

function xyzOf(display: string) {
  return xyzFromLinear(linearFromHex(display))
}
