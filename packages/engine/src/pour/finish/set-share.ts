import { gainedBy, hourReached, settingRate, type TemperatureReadings } from '../setting.ts'

/** What the surface itself said. */
export interface SeenShare {
  /** From mixing. */
  readonly hour: number
  /** Share of the way to initial set that the sign stands for. */
  readonly share: number
}

export interface SetShareInput {
  readonly temperature: TemperatureReadings
  /** Initial set at the reference, h from mixing. */
  readonly initial: number
  /** °C */
  readonly reference: number
  /** J/mol */
  readonly activation: number
  /** The last sign seen; it outranks what is computed. */
  readonly seen: SeenShare | null
}

/** The way to initial set: 0 at mixing, 1 at initial set. */
export interface SetShare {
  readonly shareAt: (hour: number) => number
  /** Hour of a share; null where the temperatures end before it. */
  readonly hourOf: (share: number) => number | null
}

/** A sign moves what is left by no more than this either way: further off, the sign or the mix is looked at, not the clock. */
const FASTEST = 2
const SLOWEST = 0.5

/**
 * Share of the way to initial set in time: the integral of the speed of setting over the set at the reference temperature.
 *
 * Where a sign was seen, the share at that hour is the sign's, and what is left runs at the computed speed times the share seen over the
 * share computed (kept between 0.5 and 2): concrete that was quick so far is taken to stay so. Rule of the trade, no source.
 */
export function setShare({ temperature, initial, reference, activation, seen }: SetShareInput): SetShare {
  const speed = (celsius: number): number => settingRate(celsius, reference, activation)
  const plain = (hour: number): number => gainedBy(temperature, hour, speed) / initial
  const hourOfPlain = (share: number): number | null =>
    share <= 0 ? 0 : hourReached(temperature, share * initial, speed)
  if (seen === null) return { shareAt: plain, hourOf: hourOfPlain }
  const then = plain(seen.hour)
  const ratio = then > 0 ? seen.share / then : 1
  const onward = Math.min(FASTEST, Math.max(SLOWEST, ratio))
  return {
    shareAt: (hour) => (hour <= seen.hour ? plain(hour) * ratio : seen.share + (plain(hour) - then) * onward),
    hourOf: (share) =>
      hourOfPlain(
        share <= seen.share ? (ratio > 0 ? share / ratio : 0) : then + (share - seen.share) / onward,
      ),
  }
}
