import type { CodeFamily } from '../../codes/family.ts'
import type { PourLimit, SlumpSample } from '../../codes/pour-rules.ts'
import { enteredBy, type Source } from '../../working/source.ts'

/** A slump as ordered: a target, mm, judged by the family's tolerance, or a band [low, high] that is taken as given. */
export type OrderedSlump = number | readonly [low: number, high: number]

/** The stated limit where there is one, else the family's. */
export function dischargeLimit(family: CodeFamily, stated: number | null | undefined): PourLimit {
  return stated === null || stated === undefined
    ? family.pour.dischargeMinutes
    : { value: stated, source: enteredBy('the mix or the order') }
}

export interface SlumpBand {
  readonly low: number | null
  readonly high: number | null
  readonly source: Source
  readonly missing: readonly string[]
  readonly note?: string
}

/** Slumps that are accepted, mm: the band as ordered, or the family's tolerance on the target. */
export function slumpBand(
  family: CodeFamily,
  ordered: OrderedSlump | null | undefined,
  sample: SlumpSample,
): SlumpBand {
  const source = enteredBy('the mix or the order')
  if (ordered === null || ordered === undefined)
    return { low: null, high: null, source, missing: ['slump: ordered slump of the mix'] }
  if (typeof ordered !== 'number') {
    const [low, high] = ordered
    return low <= high
      ? { low, high, source, missing: [] }
      : { low: null, high: null, source, missing: ['slump: ordered band runs backwards'] }
  }
  const tolerance = family.pour.slumpTolerance(ordered, sample)
  if (tolerance === null)
    return { low: null, high: null, source, missing: ['slump: no confirmed tolerance for this target'] }
  return {
    low: Math.max(0, ordered - tolerance.below),
    high: ordered + tolerance.above,
    source: tolerance.source,
    missing: [],
    ...(tolerance.note === undefined ? {} : { note: tolerance.note }),
  }
}
