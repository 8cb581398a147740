import * as z from 'zod'
import type { CodeFamily } from '../codes/family.ts'
import type { AcceptanceRule } from '../codes/quality-rules.ts'
import { parseInput } from '../working/parse.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Assumed, Step } from '../working/worked.ts'

const positive = z.number().positive()

/** Specified strength and results in the order of sampling: each inner list one test's specimens, MPa. */
export const resultsSchema = z.strictObject({
  specified: positive,
  results: z.array(z.array(positive).min(1).max(100)).min(1).max(100_000),
  sigma: positive.optional(),
})

export type StrengthResults = z.output<typeof resultsSchema>

/** @throws InputError naming each field. */
export function parseResults(value: unknown, from = ''): StrengthResults {
  return parseInput(resultsSchema, value, from)
}

export interface Acceptance {
  readonly verdict: Verdict
  readonly rules: readonly AcceptanceRule[]
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

/** Judges test results by a family's rules of acceptance. A test is the mean of its specimens. */
export function acceptResults({
  results,
  family,
}: {
  readonly results: StrengthResults
  readonly family: CodeFamily
}): Acceptance {
  const tests = results.results.map(
    (specimens) => specimens.reduce((sum, value) => sum + value, 0) / specimens.length,
  )
  const judged = family.quality.acceptance({
    specified: results.specified,
    tests,
    ...(results.sigma === undefined ? {} : { sigma: results.sigma }),
  })
  if (!judged.known) return { verdict: 'unknown', rules: [], unknown: judged.gaps, working: [], assumed: [] }
  return {
    verdict: joinVerdicts(judged.value.map(({ verdict }) => verdict)),
    rules: judged.value,
    unknown: judged.value.flatMap((rule) => rule.unknown ?? []),
    working: judged.working,
    assumed: singleAssumed(results, family),
  }
}

/** A test of one cylinder is not the mean of two that the us rule speaks of: the caller is told what was done. */
function singleAssumed({ results }: StrengthResults, family: CodeFamily): Assumed[] {
  const singles = results.filter((specimens) => specimens.length === 1).length
  if (family.id !== 'us' || singles === 0) return []
  return [
    {
      field: 'results',
      value: singles,
      unit: 'tests',
      why: 'of one value each, taken as the mean of the two cylinders that a test has',
    },
  ]
}
