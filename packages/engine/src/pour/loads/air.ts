import { weatherOfPour, type YardWeather } from '../../cure/heat/yard-weather.ts'

/** Air temperature at an instant, °C, and where it is from. */
export interface AirThen {
  readonly celsius: number
  readonly from: 'measured' | 'logged' | 'forecast'
}

export interface AirInput {
  /** UTC instant. */
  readonly at: string
  /** By time; a forecast counts only after the last logged reading. */
  readonly logged: readonly YardWeather[]
  readonly forecast: readonly YardWeather[]
}

/** A single reading speaks for so long, h: as far as hourly readings stand apart. */
const LONGEST_ALONE = 1

/**
 * Air at an instant: straight between the readings around it, or one reading not more than an hour away. Null in a gap. What lies after the last logged
 * reading counts as forecast.
 */
export function airAt({ at, logged, forecast }: AirInput): AirThen | null {
  if (!Number.isFinite(Date.parse(at))) return null
  const { weather, loggedTo } = weatherOfPour({ logged, forecast, mixed: at, until: 0 })
  const fromOf = (hours: number): AirThen['from'] =>
    loggedTo !== null && hours <= loggedTo + 1e-9 ? 'logged' : 'forecast'
  const before = weather.air.findLast(([hours]) => hours <= 0)
  const after = weather.air.find(([hours]) => hours >= 0)
  const gap = weather.gaps.some(({ from, to }) => from < 0 && to > 0)
  if (before && after && !gap) {
    const span = after[0] - before[0]
    const celsius = span === 0 ? before[1] : before[1] + ((after[1] - before[1]) * -before[0]) / span
    return { celsius, from: fromOf(after[0]) }
  }
  const near = [before, after].find((point) => point !== undefined && Math.abs(point[0]) <= LONGEST_ALONE)
  return near === undefined ? null : { celsius: near[1], from: fromOf(near[0]) }
}
