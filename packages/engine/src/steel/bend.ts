import type { BendRuleInput, SteelRules } from '../codes/steel-rules.ts'
import { verdictOf } from '../working/check.ts'
import { notAboveZero } from '../working/guard.ts'
import type { Source } from '../working/source.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Step } from '../working/worked.ts'

export interface BendInput extends BendRuleInput {
  readonly rules: SteelRules
  /** Inside diameter of the bend as drawn or measured, mm. */
  readonly inside: number
  /** Of the bar at bending, °C; null where not known: then it is not judged. */
  readonly temperature: number | null
}

export interface BendVerdict {
  /** Least inside diameter, mm; null where no confirmed value holds. */
  readonly limit: number | null
  readonly inside: number
  readonly verdict: Verdict
  /** Lowest bar temperature of the family, °C, and how this bar stands to it. */
  readonly cold: {
    readonly coldest: number
    readonly temperature: number
    readonly verdict: Verdict
    readonly source: Source
  } | null
  readonly source: Source | null
  readonly notes: readonly string[]
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
}

/** Over this a bar is heated: the limits of cold bending do not speak of it, °C. Common practice, no source. */
const COLD_TO = 100

/**
 * Go or no-go of one bend: inside diameter against the family's least, and the bar's temperature against the coldest that the
 * family lets it be bent at. Where the family names no temperature a note says so and it has no verdict.
 *
 * A bar over 100 °C is not bent cold: not known. Rebending, welds near the bend and the crushing of concrete inside it are left out.
 */
export function checkBend(input: BendInput): BendVerdict {
  const { rules, inside, temperature } = input
  const rule = rules.leastBend(input)
  const unknown = [...notAboveZero({ inside }), ...(rule.known ? [] : rule.gaps)]
  const limit = rule.known ? rule.value : null
  const size: Verdict =
    limit === null || unknown.length > 0 ? 'unknown' : verdictOf(inside, limit, 'at least')
  const notes: string[] = []
  let cold: BendVerdict['cold'] = null
  const temperatureGaps = temperatureGap(temperature)
  if (temperatureGaps.length > 0) {
    unknown.push(...temperatureGaps)
  } else if (rules.coldest === null) {
    notes.push('This family names no lowest temperature for cold bending: the engineer decides.')
  } else if (temperature === null) {
    notes.push(`Bar temperature not given; not below ${rules.coldest.temperature} °C.`)
  } else {
    cold = {
      coldest: rules.coldest.temperature,
      temperature,
      verdict: verdictOf(temperature, rules.coldest.temperature, 'at least'),
      source: rules.coldest.source,
    }
    const { advised } = rules.coldest
    if (advised !== undefined && cold.verdict === 'pass' && temperature < advised.temperature) {
      notes.push(`${advised.source.standard} asked for ${advised.temperature} °C: sources differ.`)
    }
  }
  const parts: Verdict[] = [size]
  if (cold !== null) parts.push(cold.verdict)
  if (temperatureGaps.length > 0) parts.push('unknown')
  return {
    limit,
    inside,
    verdict: joinVerdicts(parts),
    cold,
    source: rule.known ? (rule.working[0]?.source ?? null) : null,
    notes,
    unknown,
    working: rule.working ?? [],
  }
}

function temperatureGap(temperature: number | null): string[] {
  if (temperature === null) return []
  if (!Number.isFinite(temperature)) return ['temperature: a number']
  return temperature > COLD_TO
    ? [`temperature: over ${COLD_TO} °C the bar is bent hot, no confirmed rule, found ${temperature}`]
    : []
}
