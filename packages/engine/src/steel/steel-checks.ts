import type { SteelRules } from '../codes/steel-rules.ts'
import type { Drawing } from '../panel/drawing.ts'
import { type Check, compare } from '../working/check.ts'
import { enteredBy, GEOMETRY } from '../working/source.ts'
import type { Yard } from '../yard/yard.ts'
import { barLimits } from './laid-out/bar-limits.ts'
import { NO_RULE } from './laid-out/bend-of.ts'
import { besideCheck } from './laid-out/beside-check.ts'
import type { BesidePairs } from './laid-out/beside-pairs.ts'
import { bodyClashes } from './laid-out/body-clash.ts'
import { type Clash, clashCheck } from './laid-out/clash.ts'
import { faceCover } from './laid-out/face-cover.ts'
import { insertChecks } from './laid-out/insert-checks.ts'
import type { LaidLine } from './laid-out/lay-context.ts'
import type { ListedBar } from './listed-bars.ts'
import { listedChecks } from './listed-checks.ts'
import { matChecks } from './mat-checks.ts'
import { gradeOf, longestStock, type PlannedMat } from './mats.ts'
import type { PlacedBar, ScheduledBar } from './steel-plan.ts'

export interface SteelChecksInput {
  readonly drawing: Drawing
  readonly yard: Yard | null
  readonly rules: SteelRules
  readonly mats: readonly PlannedMat[]
  readonly listed: readonly ListedBar[]
  /** Edge bars, trimmers, starters and ties. */
  readonly laid: readonly LaidLine[]
  readonly bars: readonly ScheduledBar[]
  readonly placed: readonly PlacedBar[]
  /** Pairs of placed bars that would be in the same place. */
  readonly clashes: readonly Clash[]
  /** Pairs that run side by side too near, or in contact. */
  readonly beside: BesidePairs
}

/** What drawing, yard and code decide about the steel, in the order of the steps. */
export function steelChecks(input: SteelChecksInput): Check[] {
  const { drawing, rules, mats, listed, laid } = input
  const mat = matChecks(mats, drawing, rules)
  return [
    ...stockChecks(input),
    ...listed.flatMap((bar) => bendChecks(bar)),
    ...barLimits({ rules, bars: input.bars, listed }),
    ...mat.cage,
    ...laid.flatMap(({ checks }) => checks),
    ...samePlaceCheck(input),
    ...sideBySideCheck(input),
    ...faceChecks(input),
    ...listedChecks(listed, drawing, rules),
    ...bodyClashes(drawing, input.placed, [...notLaid(input), ...withoutHeight(input.placed)]),
    ...insertChecks({ drawing, yard: input.yard, placed: input.placed, notLaid: notLaid(input) }),
    ...mat.set,
  ]
}

/** Told where bars clash, and where more than mats is laid out. */
function samePlaceCheck(input: SteelChecksInput): Check[] {
  const { laid, listed, clashes, placed } = input
  const drawn = listed.filter(({ paths, drawn }) => paths.length > 0 && drawn.layer !== undefined)
  const more = laid.some(({ bars, gaps }) => bars.length > 0 || gaps.length > 0)
  if (clashes.length === 0 && !more && drawn.length < 2) return []
  return [clashCheck(clashes, [...notLaid(input), ...withoutHeight(placed)])]
}

/** Told where bars are crowded, and where more than mats is laid out. */
function sideBySideCheck(input: SteelChecksInput): Check[] {
  const { beside, drawing, rules, placed, laid } = input
  const more = placed.some(({ use }) => use !== 'mat') || laid.some(({ gaps }) => gaps.length > 0)
  if (placed.length === 0 || (beside.crowded.length === 0 && !more)) return []
  const unplaced = [...notLaid(input), ...withoutHeight(placed)]
  return [besideCheck({ drawing, rules, pairs: beside, placed, unplaced })]
}

/** Told where bars lack the cover of a face, and where more than mats is laid out. */
function faceChecks(input: SteelChecksInput): Check[] {
  const { drawing, placed } = input
  const more = placed.some(({ use }) => use !== 'mat')
  return (['mould', 'top'] as const).flatMap((face) => {
    const check = faceCover(drawing, placed, face, [...notLaid(input), ...withoutHeight(placed)])
    return check === null || (check.verdict !== 'fail' && !more) ? [] : [check]
  })
}

/** Bars laid out in plan only, by the field that their height lacks. */
function withoutHeight(placed: readonly PlacedBar[]): string[] {
  const flat = placed.filter(({ centreline }) => centreline === null)
  return [...new Set(flat.map(({ layer }) => `cover.${layer}: height of its bars, mm`))]
}

/** What keeps bars of the drawing from being laid out, by field. */
function notLaid({ mats, laid }: SteelChecksInput): string[] {
  const edge = mats.some((mat) => mat.laid === null) ? ['cover.edge: cover at edges and openings, mm'] : []
  return [...edge, ...laid.flatMap(({ gaps }) => gaps)]
}

/** Size and grade as one word, for ids and labels: `16-500E`. */
export function sizeKey({ diameter, grade }: { readonly diameter: number; readonly grade: string }): string {
  return `${diameter}-${grade}`
}

function stockChecks({ yard, rules, bars }: SteelChecksInput): Check[] {
  const longest = new Map<string, ScheduledBar>()
  for (const bar of bars) {
    const key = sizeKey(bar)
    if (bar.cutLength > (longest.get(key)?.cutLength ?? 0)) longest.set(key, bar)
  }
  return [...longest].map(([key, bar]) => {
    const stock = longestStock({ yard, diameter: bar.diameter, grade: bar.grade })
    const missing: string[] = []
    if (gradeOf(rules, bar.grade) === null)
      missing.push(`grade: ${bar.grade} is no grade of this code family`)
    const size = rules.barSize({ diameter: bar.diameter })
    if (!size.known) missing.push(...size.gaps)
    if (stock === null) {
      missing.push(
        yard === null ? 'yard: its bar stock' : `yard.stock: lengths of ${bar.diameter} mm ${bar.grade}`,
      )
    }
    return compare({
      id: `stock:${key}`,
      step: 'steel-in',
      what: `Longest ${bar.diameter} mm ${bar.grade} bar against the stock`,
      demand: bar.cutLength,
      limit: stock,
      unit: 'mm',
      sense: 'at most',
      source: enteredBy('the yard: stock'),
      missing,
      note: `${bar.mark}, as cut`,
    })
  })
}

function bendChecks(bar: ListedBar): Check[] {
  const checks: Check[] = []
  if (bar.bent && bar.least !== null) {
    const { least, drawn } = bar
    checks.push(
      compare({
        id: `bend:${bar.mark}`,
        step: 'cut-bend',
        what: `Inside diameter of the bends of ${bar.mark}`,
        demand: bar.inside,
        limit: least.known ? least.value : null,
        unit: 'mm',
        sense: 'at least',
        source: least.known ? (least.working[0]?.source ?? NO_RULE) : NO_RULE,
        working: least.known ? least.working : [],
        missing: least.known ? [] : least.gaps,
        ...(drawn.inside === undefined && bar.inside !== null
          ? {
              assumed: [
                {
                  field: `steel.${bar.mark}.inside`,
                  value: bar.inside,
                  unit: 'mm',
                  why: 'the drawing gives no inside diameter: the least that the code allows',
                },
              ],
            }
          : {}),
      }),
    )
  }
  if (!bar.shape.known) {
    checks.push(
      compare({
        id: `cut:${bar.mark}`,
        step: 'cut-bend',
        what: `Cut length of ${bar.mark}`,
        demand: null,
        limit: null,
        unit: 'mm',
        sense: 'at most',
        source: GEOMETRY,
        missing: bar.shape.gaps,
      }),
    )
  }
  return checks
}
