import type { Mix } from '../yard/yard.ts'
import { ageRate } from './age-method.ts'
import { ageOf } from './equivalent-age.ts'
import type { Cylinder } from './live-curve.ts'
import { type Reading, readingGaps, readingsUntil } from './readings.ts'
import { mixMethod } from './strength-from-log.ts'
import { BAND_DEVIATE, type StrengthBand, strengthModel } from './strength-model.ts'

/** How often a band that was made without a result held it. */
export interface Cover {
  /** Results that a band could be held against. */
  readonly count: number
  readonly held: number
  /** Results under the low edge. */
  readonly below: number
  /** Mean half-width of the bands, MPa; null with none. */
  readonly halfWidth: number | null
  /** What the share may be in the long run, 90 % two-sided; null with fewer than `LEAST_COVER`. */
  readonly from: number | null
  readonly to: number | null
  /** Results that no band was known for. */
  readonly left: number
}

type CoverMix = Pick<Mix, 'curve' | 'tests' | 'scatter' | 'reference' | 'activation'>

/** With fewer results the share says nothing yet. Common practice, no source. */
export const LEAST_COVER = 10

/** Results within this of each other are one test, h. */
const SAME_TEST = 2

/**
 * How often the band of a mix held its own tests: each is left out in turn, the curve is drawn through the rest, and its
 * 90 % band at that age is held against the test.
 *
 * A test that the rest does not span, the youngest and the oldest mostly, is not judged and counts in `left`. Computed.
 */
export function ownCover({ mix }: { readonly mix: Omit<CoverMix, 'curve'> }): Cover {
  const { tests = [], scatter } = mix
  const { method } = mixMethod(mix)
  return coverOf(
    tests.map(({ age, strength, temperature }, at) => {
      const rest = tests.filter((_, other) => other !== at)
      const model = strengthModel({ source: { tests: rest, scatter }, method })
      const counted = age * (temperature === undefined ? 1 : ageRate(method, temperature))
      return { strength, band: model.known ? model.value.band(counted) : null }
    }),
  )
}

/** A pour of the past: its log, and what came of it. */
export interface PastPour {
  /** Hours from mixing, °C. */
  readonly readings: readonly Reading[]
  readonly cylinders: readonly Cylinder[]
}

/**
 * How often the band of a mix, along each pour's own log and made without its results, held the results. Results within
 * two hours of each other and cured alike are one test, their mean.
 *
 * A result cured with the panel later than two hours after the last reading has no band: it counts in `left`. Computed.
 */
export function coverOfPours({
  mix,
  pours,
}: {
  readonly mix: CoverMix
  readonly pours: readonly PastPour[]
}): Cover {
  const { method } = mixMethod(mix)
  const model = strengthModel({ source: mix, method })
  return coverOf(
    pours.flatMap(({ readings, cylinders }) =>
      testsOf(cylinders).map(({ hour, strength, celsius }) => {
        if (!model.known) return { strength, band: null }
        if (celsius !== undefined)
          return { strength, band: model.value.band(hour * ageRate(method, celsius)) }
        const last = readings.at(-1)?.[0] ?? Number.NEGATIVE_INFINITY
        const log = readingsUntil(readings, Math.min(hour, last))
        if (hour - last > SAME_TEST || readingGaps(log).length > 0) return { strength, band: null }
        return { strength, band: model.value.band(ageOf(log, method)) }
      }),
    ),
  )
}

function testsOf(cylinders: readonly Cylinder[]): Cylinder[] {
  const left = [...cylinders].sort((a, b) => a.hour - b.hour)
  const tests: Cylinder[] = []
  while (left.length > 0) {
    const first = left[0] as Cylinder
    const alike = left.filter(
      ({ hour, celsius }) => hour - first.hour <= SAME_TEST && celsius === first.celsius,
    )
    for (const each of alike) left.splice(left.indexOf(each), 1)
    const mean = (of: (each: Cylinder) => number) =>
      alike.reduce((sum, each) => sum + of(each), 0) / alike.length
    tests.push({ ...first, hour: mean(({ hour }) => hour), strength: mean(({ strength }) => strength) })
  }
  return tests
}

function coverOf(
  results: readonly { readonly strength: number; readonly band: StrengthBand | null }[],
): Cover {
  const judged = results.flatMap(({ strength, band }) => (band === null ? [] : [{ strength, band }]))
  const count = judged.length
  const held = judged.filter(({ strength, band }) => strength >= band.low && strength <= band.high).length
  const enough = count >= LEAST_COVER
  const [from, to] = enough ? wilson(held, count) : [null, null]
  return {
    count,
    held,
    below: judged.filter(({ strength, band }) => strength < band.low).length,
    halfWidth:
      count === 0 ? null : judged.reduce((sum, { band }) => sum + (band.high - band.low) / 2, 0) / count,
    from,
    to,
    left: results.length - count,
  }
}

/** Interval of a share, by the score. E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927), from memory. */
function wilson(held: number, count: number): [number, number] {
  const [p, z] = [held / count, BAND_DEVIATE]
  const over = 1 + z ** 2 / count
  const middle = (p + z ** 2 / (2 * count)) / over
  const half = (z * Math.sqrt((p * (1 - p)) / count + z ** 2 / (4 * count ** 2))) / over
  return [Math.max(0, middle - half), Math.min(1, middle + half)]
}
