import type { CodeFamily } from '../codes/family.ts'
import type { ToleranceWhat } from '../codes/quality-rules.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { verdictOf } from '../working/check.ts'
import { GEOMETRY, type Source } from '../working/source.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Step } from '../working/worked.ts'
import { familyLimit } from './family-limit.ts'

export interface Deviation {
  readonly what: ToleranceWhat
  /** Deviation from what was drawn, mm, with its sign where it has one; null where it was not measured. */
  readonly value: number | null
  /** The limit on the side of the value, mm; null where none is confirmed. */
  readonly limit: number | null
  readonly low: number | null
  readonly high: number | null
  readonly verdict: Verdict
  readonly source: Source
  readonly working: readonly Step[]
  readonly unknown?: readonly string[]
  readonly note?: string
}

/** One reading of a deviation with the size that its limit grows with. */
export interface DeviationReading {
  readonly value: number
  readonly size: number
  readonly steps: readonly Step[]
}

export interface DeviationInput {
  readonly what: ToleranceWhat
  readonly readings: readonly DeviationReading[]
  /** What would have to be measured, where there is no reading. */
  readonly missing: string
  readonly family: CodeFamily
  readonly limits?: Readonly<Record<string, EnteredLimit>> | undefined
  readonly note?: string
}

/**
 * Holds readings of one deviation against their limits and keeps the worst: the one that uses most of its limit, or the
 * greatest where no limit is confirmed. Not measured, or no confirmed limit: `unknown`, never a pass.
 */
export function deviationOf({ what, readings, missing, family, limits, note }: DeviationInput): Deviation {
  const judged = readings.map((reading) => judgeReading(what, reading, family, limits))
  const worst = judged.reduce<Deviation | null>(
    (most, next) => (most === null || use(next) > use(most) ? next : most),
    null,
  )
  const noted = note === undefined ? {} : { note }
  if (worst === null) {
    const limit = familyLimit({ what, size: 1, family, limits })
    return {
      what,
      value: null,
      limit: null,
      low: null,
      high: null,
      verdict: 'unknown',
      source: limit.known ? limit.value.source : GEOMETRY,
      working: [],
      unknown: [missing],
      ...noted,
    }
  }
  return { ...worst, verdict: joinVerdicts(judged.map(({ verdict }) => verdict)), ...noted }
}

function judgeReading(
  what: ToleranceWhat,
  { value, size, steps }: DeviationReading,
  family: CodeFamily,
  limits: Readonly<Record<string, EnteredLimit>> | undefined,
): Deviation {
  const found = familyLimit({ what, size, family, limits })
  if (!found.known || !Number.isFinite(value)) {
    const unknown = found.known ? [`${what}: a finite reading`] : found.gaps
    return {
      what,
      value: Number.isFinite(value) ? value : null,
      limit: null,
      low: null,
      high: null,
      verdict: 'unknown',
      source: GEOMETRY,
      working: steps,
      unknown,
    }
  }
  const { low, high, source } = found.value
  const limit = value < 0 ? low : high
  const verdict = value < 0 ? verdictOf(value, low, 'at least') : verdictOf(value, high, 'at most')
  return { what, value, limit, low, high, verdict, source, working: [...steps, ...found.working] }
}

/** Share of the limit that a deviation uses; its size where there is no limit. */
function use({ value, limit }: Deviation): number {
  if (value === null) return -1
  return limit === null || limit === 0 ? Math.abs(value) : Math.abs(value / limit)
}
