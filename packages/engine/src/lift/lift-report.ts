import { misplacedInserts, type Panel } from '../panel/panel.ts'
import type { Point } from '../panel/point.ts'
import { covers } from '../panel/region.ts'
import type { Check } from '../working/check.ts'
import { InputError, type InputIssue } from '../working/issue.ts'
import { STATICS } from '../working/source.ts'
import { joinVerdicts, type Verdict } from '../working/verdict.ts'
import type { Assumed, Step } from '../working/worked.ts'
import type { Yard } from '../yard/yard.ts'
import { upliftCheck } from './lift-checks.ts'
import { riggingOf } from './rigging-of.ts'
import { inOneLine, supportLoads } from './supports.ts'

export interface LiftReportInput {
  readonly panel: Panel
  /** Its rigging says whether legs are equalised; without it inserts are rigid points. */
  readonly yard: Yard | null
  /** On own weight; 1 assumed. */
  readonly factor?: number
  /** MPa; 30 000 assumed. */
  readonly modulus?: number
  /** 0.2 assumed. */
  readonly poisson?: number
  /** Points to look at, mm. */
  readonly probes?: readonly Point[]
  readonly from?: string
}

/** One probe of the plate: null until the plate is computed. */
export interface LiftProbe {
  readonly at: Point
  readonly deflection: number | null
  readonly mx: number | null
  readonly my: number | null
  readonly mxy: number | null
  readonly stress: number | null
}

export interface LiftReport {
  /** kg */
  readonly mass: number
  /** kN, without the factor. */
  readonly weight: number
  readonly centre: Point
  /** Loads with the factor, kN. */
  readonly inserts: readonly { readonly mark: string; readonly at: Point; readonly load: number | null }[]
  readonly peak: { readonly at: Point | null; readonly stress: number | null }
  readonly probes: readonly LiftProbe[]
  readonly checks: readonly Check[]
  readonly verdict: Verdict
  readonly unknown: readonly string[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

const NO_PLATE = 'not computed yet: needs plate bending'

/**
 * A flat lift as far as statics go: mass, centre of gravity and, for three inserts or four equalised legs, the load on
 * each. Peak tension and what a probe would read are unknown.
 *
 * @throws InputError for fewer than three inserts, all in one line, an insert out of place or a probe outside the concrete.
 */
export function liftReport(input: LiftReportInput): LiftReport {
  const { panel, yard, factor = 1, probes = [], from = '' } = input
  const { drawing } = panel
  const issues = [...insertIssues(panel), ...probeIssues(panel, probes)]
  if (issues.length > 0) throw new InputError(issues, from)
  const inserts = drawing.inserts ?? []
  const rigging = riggingOf(drawing.rigging, yard?.rigging ?? [])
  const loads = supportLoads({
    weight: panel.weight * factor,
    centre: panel.centre,
    supports: inserts,
    equalised: !('gap' in rigging) && rigging.equalised === true,
  })
  const checks = upliftCheck({ loads, marks: inserts.map(({ mark }) => mark) })
  return {
    mass: panel.mass,
    weight: panel.weight,
    centre: panel.centre,
    inserts: inserts.map(({ mark, at }, index) => ({
      mark,
      at,
      load: loads.known ? (loads.value[index] ?? null) : null,
    })),
    peak: { at: null, stress: null },
    probes: probes.map((at) => ({ at, deflection: null, mx: null, my: null, mxy: null, stress: null })),
    checks,
    verdict: joinVerdicts([...checks.map(({ verdict }) => verdict), 'unknown']),
    unknown: [
      `peak: ${NO_PLATE}`,
      ...(probes.length > 0 ? [`probes: ${NO_PLATE}`] : []),
      ...(loads.known ? [] : loads.gaps),
    ],
    working: [
      ...panel.working,
      {
        symbol: 'F',
        formula: 'W f',
        given: { W: panel.weight, f: factor },
        result: panel.weight * factor,
        unit: 'kN',
        source: STATICS,
        note: 'load that the supports share, the factor in it',
      },
      ...(loads.known ? loads.working : []),
    ],
    assumed: [...panel.assumed, ...assumedIn(input)],
  }
}

function assumedIn({ factor, modulus, poisson, panel, yard }: LiftReportInput): Assumed[] {
  const because = 'not given'
  const assumed: Assumed[] = []
  if (factor === undefined) assumed.push({ field: 'factor', value: 1, unit: '', why: because })
  if (modulus === undefined) assumed.push({ field: 'modulus', value: 30_000, unit: 'MPa', why: because })
  if (poisson === undefined) assumed.push({ field: 'poisson', value: 0.2, unit: '', why: because })
  if ('gap' in riggingOf(panel.drawing.rigging, yard?.rigging ?? [])) {
    const why = 'no rigging is known that equalises'
    assumed.push({ field: 'rigging', value: 'inserts are rigid points', unit: '', why })
  }
  return assumed
}

function insertIssues(panel: Panel): InputIssue[] {
  const { inserts } = panel.drawing
  // Missing inserts are proposed, not refused; drawn ones must be able to hold a panel level.
  if (inserts === undefined) return []
  const expected = 'three or more inserts, not all in one line'
  if (inserts.length < 3) {
    return [
      { path: 'inserts', found: `${inserts.length} insert${inserts.length === 1 ? '' : 's'}`, expected },
    ]
  }
  if (inOneLine(inserts.map(({ at }) => at))) {
    return [{ path: 'inserts', found: 'all inserts in one line', expected }]
  }
  return misplacedInserts(panel)
}

function probeIssues({ region }: Panel, probes: readonly Point[]): InputIssue[] {
  return probes.flatMap((at, index) =>
    covers(region, at)
      ? []
      : [{ path: `probe[${index}]`, found: `${at[0]},${at[1]}`, expected: 'a point of the concrete' }],
  )
}
