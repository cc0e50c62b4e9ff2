import { capital } from '../../plan/capital.ts'
import { formatStops } from '../../plan/entry/stops.ts'
import { amountText, mendBy, type Check, type CheckView } from './check.ts'
import { powersBy } from './lightMends.ts'

/** An even background varies by no more than these over the frame (common practice, no source). */
const EVEN_COLOUR_STOPS = 0.3
const EVEN_WHITE_STOPS = 0.5
/** More than a stop past white everywhere only adds haze and burnt edges (common practice, no source). */
const HOT_WHITE_STOPS = 1
/** Left past white when powers are set to it: a head's readings vary by about as much (common practice, no source). */
const WHITE_MARGIN_STOPS = 0.3
/** Black lifted above three and a half under mid-grey looks milky (common practice, no source). */
const HAZE_STOPS_UNDER_GREY = -3.5

export const whiteOut: Check = (view) => {
  const { look, measured: { background } } = view
  if (look.backdrop.intent !== 'clean-white' || background.verdict === 'white') return []
  const worst = background.spots.filter((spot) => spot.verdict !== 'white')
    .reduce((a, b) => ((a.stopsMissing ?? Infinity) >= (b.stopsMissing ?? Infinity) ? a : b))
  const cleared = background.verdictAfterFinish === 'white'
  const missing = worst.stopsMissing
  return [{
    key: 'white-out:background',
    rule: 'white-out',
    severity: cleared ? 'note' : 'look',
    message: missing === null
      ? `${capital(worst.label)} is dark: no light reaches it`
      : cleared
        ? `${capital(worst.label)} clips white only through the finish; in camera it is ${amountText(missing)} stop short`
        : `${capital(worst.label)} keeps ${worst.cast ? `a ${worst.cast} cast` : 'its tone'}: ${amountText(missing)} stop short of white`,
    action: missing === null
      ? 'Light the background'
      : background.whitePointPullStops !== null && background.whitePointPullStops <= 0.7
        ? `Raise the background lights by ${amountText(missing)} stop, or pull the white point by ${amountText(background.whitePointPullStops)}`
        : `Raise the background lights by ${amountText(missing)} stop, or choose a gel that whitens sooner`,
    value: missing ?? 99,
    threshold: 0,
    unit: 'stops short of white',
    about: [worst.areaId],
    ...(missing === null ? {} : mendBy(`Raise the background by ${amountText(missing + WHITE_MARGIN_STOPS)}`, powersBy(view, backgroundLights(view), missing + WHITE_MARGIN_STOPS))),
  }]
}

export const whiteTooHot: Check = (view) => {
  const { look, measured: { background } } = view
  if (look.backdrop.intent !== 'clean-white' || background.stopsMissing === null) return []
  const over = -background.stopsMissing
  if (over <= HOT_WHITE_STOPS) return []
  return [{
    key: 'white-too-hot:background',
    rule: 'white-too-hot',
    severity: 'look',
    message: `The background is ${amountText(over)} stops past white everywhere: haze and burnt edges`,
    action: `Lower the background lights by ${amountText(over - WHITE_MARGIN_STOPS)} stops`,
    value: over,
    threshold: HOT_WHITE_STOPS,
    unit: 'stops past white',
    about: ['background-centre'],
    ...mendBy(`Lower the background by ${amountText(over - WHITE_MARGIN_STOPS)}`, powersBy(view, backgroundLights(view), WHITE_MARGIN_STOPS - over)),
  }]
}

export const unevenBackground: Check = ({ look, measured: { background } }) => {
  const { intent } = look.backdrop
  // A background that clips white everywhere is even in the file, whatever the meter says.
  if (intent === 'free' || intent === 'glow' || (intent === 'clean-white' && background.verdict === 'white')) return []
  const threshold = intent === 'clean-white' ? EVEN_WHITE_STOPS : EVEN_COLOUR_STOPS
  if (background.unevennessStops <= threshold) return []
  return [{
    key: 'uneven-background:background',
    rule: 'uneven-background',
    severity: 'look',
    message: `The background varies by ${amountText(background.unevennessStops)} stops over the frame`,
    action: 'Move the background light back or add a second one from the other side; or call it a glow',
    value: background.unevennessStops,
    threshold,
    unit: 'stops',
    about: background.spots.map((spot) => spot.areaId),
  }]
}

export const haze: Check = ({ measured: { background } }) => {
  const lifted = background.haze.blackStopsUnderGrey
  if (lifted === null || lifted <= HAZE_STOPS_UNDER_GREY) return []
  return [{
    key: 'haze:lens',
    rule: 'haze',
    severity: 'look',
    message: `Stray light in the lens lifts black to ${formatStops(lifted)} from mid-grey: milky`,
    action: 'Lower what is behind, crop it with black V-flats, or shade the lens',
    value: lifted,
    threshold: HAZE_STOPS_UNDER_GREY,
    unit: 'stops from mid-grey',
    about: ['background-centre'],
  }]
}

function backgroundLights({ measured: { lights } }: CheckView): string[] {
  return lights.filter(({ on, plane }) => on && plane === 'background').map(({ id }) => id)
}
