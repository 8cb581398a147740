import {
  type AlongNight,
  FORECAST_SPREAD,
  type LogCompared,
  type NightNow,
} from '@castwright/engine/cure/night'
import { fixed } from '../look/index.ts'
import { whenText } from '../panel/when.ts'

const FACE = { top: 'at the top face', bottom: 'at the bottom', inside: 'inside' } as const

/** Hour from mixing as words, such as `Thu 06:10`; `late`: the next five minutes on the clock, so that nobody is told a minute too early. */
export type HourText = (hour: number, late?: 'late') => string

const HOUR = 3_600_000
const FIVE_MINUTES = 300_000

/** Hours from mixing on the yard's clock. */
export function hourText({
  mixed,
  zone,
  now,
}: {
  /** ms since 1970 */
  readonly mixed: number
  readonly zone: string
  readonly now: Date
}): HourText {
  return (hour, late) => {
    const at = mixed + hour * HOUR
    const shown = late === 'late' ? Math.ceil(at / FIVE_MINUTES - 1e-6) * FIVE_MINUTES : at
    return whenText(new Date(shown).toISOString(), zone, now)
  }
}

/** What a night comes to, in one or two sentences. */
export function nightSentence(night: NightNow, when: HourText, age: number): string {
  const { coldest, frost } = night
  const cold =
    coldest.hour < 0.25
      ? `Never colder than the ${fixed(coldest.celsius, 1)} °C it was placed at`
      : `Coldest ${fixed(coldest.celsius, 1)} °C ${when(coldest.hour)} ${FACE[coldest.place]}`
  const freezes = frost === null ? '' : ` It freezes from ${when(frost)} on.`
  return `${cold}; ${strengthWords(night, when, age)}.${freezes}`
}

/** When the strip strength is met along the night, and between which hours if the forecast is out. */
export function strengthWords(
  { strength, cold, warm, wanted, hours }: Pick<NightNow, 'strength' | 'cold' | 'warm' | 'wanted' | 'hours'>,
  when: HourText,
  /** Hours from mixing to now. */
  age: number,
): string {
  if (wanted === null) return 'strip strength not known'
  const hour = metOf(strength)
  if (hour === null) {
    const gap = strength.unknown[0]
    return gap === undefined
      ? `strip strength of ${fixed(wanted, 1)} MPa not before ${when(hours)}, where the weather ends`
      : `strip strength not known: ${gap}`
  }
  if (hour <= age) return `strip strength ${fixed(wanted, 1)} MPa met ${when(hour, 'late')}`
  const edge = strength.hourLow === null ? ', no low edge' : ''
  return `strip strength ${fixed(wanted, 1)} MPa expected ${when(hour, 'late')}${spreadWords(cold, warm, when)}${edge}`
}

/** The hour that counts: that of the low edge where the mix has one. */
export function metOf({ hour, hourLow, unknown }: AlongNight): number | null {
  return hourLow ?? (unknown.length > 0 ? hour : null)
}

function spreadWords(cold: AlongNight | null, warm: AlongNight | null, when: HourText): string {
  if (cold === null || warm === null) return ''
  const [early, latest] = [metOf(warm), metOf(cold)]
  const out = `if the air is ${FORECAST_SPREAD} K warmer or colder`
  if (early === null) return ''
  const first = when(early, 'late')
  return latest === null
    ? ` (${first} or not before the weather ends, ${out})`
    : ` (${first} to ${when(latest, 'late')}, ${out})`
}

const PLACE = {
  core: 'the computed core',
  top: 'the computed top face',
  bottom: 'the computed bottom',
  coldest: 'the computed coldest place',
} as const

/** Colder than computed by more than this is no error of the computing, K: common practice, no source. */
const FAR = 5

/** How a log stands beside the computed night, and what to look at where it is far colder. */
export function comparedText({ channel, place, bias, largest, count }: LogCompared, when: HourText): string {
  const mean = Math.abs(bias) < 0.05 ? 'as warm as' : `${kelvin(bias)} than`
  const look = largest.kelvin < -FAR ? ' Far colder than it should be: is the cover on, and the heating?' : ''
  return `Logged by ${channel}, ${count} readings: on average ${mean} ${PLACE[place]}, at most ${kelvin(largest.kelvin)} (${when(largest.hour)}). The log counts.${look}`
}

function kelvin(value: number): string {
  return `${fixed(Math.abs(value), 1)} K ${value < 0 ? 'colder' : 'warmer'}`
}
