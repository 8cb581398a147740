import type { StepId } from '../steps/steps.ts'
import { verdictOf } from './check.ts'
import type { Source } from './source.ts'
import { joinVerdicts, type Verdict } from './verdict.ts'

/**
 * Something that a person must see or measure at a step. Drawing, yard and code give its limits; the record gives its
 * value. `judge` turns the two into a verdict, the same on the phone, on the server and at the command line.
 */
export interface Asked {
  /** Stable and unique in a plan. Example: `slump`. */
  readonly id: string
  readonly step: StepId
  /** The question as the floor reads it. Example: `Slump at discharge`. */
  readonly what: string
  readonly kind: 'tick' | 'number' | 'text' | 'choice' | 'readings'
  /** Empty for ticks, words and pure numbers. */
  readonly unit: string
  /** Smallest and largest good value of a number or of each reading, both included. Neither given: recorded, `unknown` until judged. */
  readonly low?: number | null
  readonly high?: number | null
  /** For `readings`: so many at least; fewer cannot be judged. */
  readonly least?: number
  /** For `choice`: the words to choose from and which of them are good. */
  readonly choices?: readonly { readonly value: string; readonly good: boolean }[]
  /** For `text` and `number` without limits: recording it is enough, there is nothing to judge. */
  readonly recordOnly?: boolean
  /** Where no confirmed limit exists: why. The verdict stays `unknown`. */
  readonly unknown?: readonly string[]
  readonly source: Source
  /** What to look at, one short sentence for the floor. */
  readonly note?: string
}

/**
 * Contract face of an asked item: `limit` is the one limit, or `low to high` in words, or null.
 */
export function limitOf(asked: Asked): number | string | null {
  const low = asked.low ?? null
  const high = asked.high ?? null
  if (low !== null && high !== null) return `${low} to ${high}`
  return low ?? high
}

/**
 * What is wanted, as a card and a sheet show it: one limit as its number, a band as `0.5888 to 0.64428`, rounded inward so that
 * nothing shown as good is judged bad. Null where nothing limits.
 */
export function wantedOf(asked: Asked): number | string | null {
  const low = asked.low ?? null
  const high = asked.high ?? null
  if (low === null || high === null) return low ?? high
  if (low === high) return low
  return `${inward(low, Math.ceil)} to ${inward(high, Math.floor)}`
}

/** Five figures, never outside the band. */
function inward(limit: number, round: (value: number) => number): string {
  if (Number.isInteger(limit)) return String(limit)
  const step = 10 ** (Math.floor(Math.log10(Math.abs(limit))) - 4)
  return String(Number((round(limit / step) * step).toPrecision(5)))
}

/** Verdict of a recorded value. What cannot be judged is `unknown`, never `pass`. */
export function judge(asked: Asked, value: unknown): Verdict {
  if (value === null || value === undefined) return 'unknown'
  switch (asked.kind) {
    case 'tick':
      return value === true ? 'pass' : value === false ? 'fail' : 'unknown'
    case 'text':
      return asked.recordOnly === true && typeof value === 'string' && value.trim() !== ''
        ? 'pass'
        : 'unknown'
    case 'choice': {
      const chosen = asked.choices?.find((choice) => choice.value === value)
      return chosen === undefined ? 'unknown' : chosen.good ? 'pass' : 'fail'
    }
    case 'readings':
      return judgeReadings(asked, value)
    case 'number':
      return judgeNumber(asked, value)
  }
}

/** Readings pass where there are enough and each is a good number; without limits, where recording them is enough. */
function judgeReadings(asked: Asked, value: unknown): Verdict {
  if (!Array.isArray(value) || value.length < Math.max(1, asked.least ?? 1)) return 'unknown'
  if (asked.recordOnly === true) return 'pass'
  return joinVerdicts(value.map((one) => judgeNumber(asked, one)))
}

function judgeNumber(asked: Asked, value: unknown): Verdict {
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'unknown'
  if (asked.unknown && asked.unknown.length > 0) return 'unknown'
  const low = asked.low ?? null
  const high = asked.high ?? null
  if (low === null && high === null) return asked.recordOnly === true ? 'pass' : 'unknown'
  if (low !== null && verdictOf(value, low, 'at least') !== 'pass') return 'fail'
  if (high !== null && verdictOf(value, high, 'at most') !== 'pass') return 'fail'
  return 'pass'
}
