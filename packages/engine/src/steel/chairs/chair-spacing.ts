import type { Layer } from '../../panel/drawing.ts'
import { type Check, compare } from '../../working/check.ts'
import { commonPractice, enteredBy, type Source, STATICS } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import { gradeOf } from '../mats.ts'
import { type MatGridSag, matGridSag } from './mat-grid.ts'
import type { CarriedMat, ChairsInput } from './plan-chairs.ts'
import { type Seat, sagLimit } from './sag-limit.ts'

/** One person with tools, kN. */
export const ASSUMED_PERSON = 1
/** Chairs are never planned farther apart than this, mm. */
export const WIDEST_CHAIRS = 1000
const CLOSEST = 200
const STEP = 50
export interface ChairSpacingFound {
  /** mm; null where not known. */
  readonly spacing: number | null
  readonly source: Source
  readonly sag: MatGridSag | null
  /** Least yield of the bars, MPa; null where a grade is none of the family's. */
  readonly yield: number | null
  readonly raise: number
  readonly checks: readonly Check[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

type SpacingInput = ChairsInput & CarriedMat & { readonly layer: Layer }

/**
 * How far apart the chairs of a layer may be: the yard's own spacing, else the family's rule, else the widest at which the mat sags
 * within the limit. Bars that yield under the person are told, not refused: they are walked on over boards.
 */
export function chairSpacing(input: SpacingInput): ChairSpacingFound {
  const { diameter, family } = input
  const rule = family.mould.chairSpacing?.({ diameter }) ?? null
  const person = input.person ?? ASSUMED_PERSON
  const seat = sagLimit({ ...input, depth: input.underside + diameter / 2 })
  const base = { raise: 0, working: [], assumed: [], gaps: [] }
  if (rule !== null) {
    const spacing = input.spacing ?? rule.spacing
    const sag = sagAt(input, spacing, person)
    return {
      ...base,
      spacing,
      source: input.spacing === undefined ? rule.source : enteredBy('the yard: spacing of chairs'),
      sag,
      yield: yieldOf(input),
      checks: [ruleCheck(input, spacing, rule)],
      working: sag === null ? [] : [sagStep(input, spacing, person, sag)],
      assumed: sag === null ? [] : personAssumed(input),
    }
  }
  const gaps = [...seat.gaps]
  const spacing = input.spacing ?? (seat.limit === null ? null : widest(input, person, seat.limit))
  if (spacing === null && gaps.length === 0) {
    gaps.push(
      `chairs, ${input.layer} layer: no spacing of ${CLOSEST} mm or more keeps the sag within ${shortly(seat.limit)} mm`,
    )
  }
  const sag = spacing === null ? null : sagAt(input, spacing, person)
  return {
    spacing,
    source: input.spacing === undefined ? STATICS : enteredBy('the yard: spacing of chairs'),
    sag,
    yield: yieldOf(input),
    raise: seat.raise,
    checks: [sagCheck(input, { spacing, person, sag, seat })],
    working: sag === null || spacing === null ? [] : [sagStep(input, spacing, person, sag)],
    assumed: [...personAssumed(input), ...seat.assumed, ...capAssumed(spacing)],
    gaps,
  }
}

/** Upward in steps while the sag keeps within the limit: the small grids are the quick ones. */
function widest(input: SpacingInput, person: number, limit: number): number | null {
  let found: number | null = null
  for (let spacing = CLOSEST; spacing <= WIDEST_CHAIRS; spacing += STEP) {
    const sag = sagAt(input, spacing, person)
    if (sag === null || sag.sag > limit) break
    found = spacing
  }
  return found
}

function sagAt(
  { diameter, carriedSpacing, crossingDiameter, crossingSpacing }: CarriedMat,
  spacing: number,
  person: number,
): MatGridSag | null {
  const crossing =
    crossingDiameter === null || crossingSpacing === null || carriedSpacing === null
      ? null
      : { diameter: crossingDiameter, spacing: crossingSpacing }
  return matGridSag({ carried: { diameter, spacing: carriedSpacing ?? spacing }, crossing, spacing, person })
}

/** Least yield among the bars of both directions, MPa. */
function yieldOf({ carried, crossing, steel, family }: SpacingInput): number | null {
  const marks = new Set([...carried, ...crossing].flatMap((row) => row.marks))
  const grades = steel.bars
    .filter((bar) => marks.has(bar.mark))
    .map((bar) => gradeOf(family.steel, bar.grade))
  const yields = grades.map((grade) => grade?.yield ?? null)
  if (yields.length === 0) return null
  return yields.reduce<number | null>(
    (least, one) => (least === null || one === null ? null : Math.min(least, one)),
    Number.POSITIVE_INFINITY,
  )
}

function ruleCheck(
  { layer, diameter }: SpacingInput,
  spacing: number,
  rule: { readonly spacing: number; readonly source: Source },
): Check {
  return compare({
    id: `chair-spacing:${layer}`,
    step: 'set',
    what: `Chairs apart under the ${layer} layer`,
    demand: spacing,
    limit: rule.spacing,
    unit: 'mm',
    sense: 'at most',
    source: rule.source,
    working: [
      {
        symbol: 's',
        formula: 'min(50 d, 1000)',
        given: { d: diameter },
        result: rule.spacing,
        unit: 'mm',
        source: rule.source,
      },
    ],
  })
}

function sagCheck(
  input: SpacingInput,
  {
    spacing,
    person,
    sag,
    seat,
  }: {
    readonly spacing: number | null
    readonly person: number
    readonly sag: MatGridSag | null
    readonly seat: Seat
  },
): Check {
  const { layer } = input
  return compare({
    id: `chair-sag:${layer}`,
    step: 'set',
    what: `Sag of the ${layer} layer between its chairs`,
    demand: sag?.sag ?? null,
    limit: seat.limit,
    unit: 'mm',
    sense: 'at most',
    source: seat.source,
    working: sag === null || spacing === null ? [] : [sagStep(input, spacing, person, sag)],
    assumed: [...personAssumed(input), ...seat.assumed],
    missing: seat.gaps,
    note: 'One person steps on a crossing between chairs; ends beyond the last chair are not stepped on.',
  })
}

function sagStep(
  { layer, diameter, carriedSpacing, crossingDiameter, crossingSpacing }: SpacingInput,
  spacing: number,
  person: number,
  { sag, stress }: MatGridSag,
): Step {
  return {
    symbol: 'w_mat',
    formula:
      'crossed beams on chairs at s both ways, stiffness method, own weight and a person on the worst crossing',
    given: {
      s: spacing,
      P: person,
      d: diameter,
      a: carriedSpacing ?? 'one bar',
      d2: crossingDiameter ?? 'none',
      a2: crossingSpacing ?? 'none',
      E: 200_000,
    },
    result: sag,
    unit: 'mm',
    source: STATICS,
    by: 'search',
    note: `${layer} layer; bending stress ${Math.round(stress)} MPa at the same time`,
  }
}

function personAssumed({ person }: ChairsInput): Assumed[] {
  return person === undefined
    ? [
        {
          field: 'chairs.person',
          value: ASSUMED_PERSON,
          unit: 'kN',
          why: 'one person with tools; no weight was entered',
        },
      ]
    : []
}

function capAssumed(spacing: number | null): Assumed[] {
  return spacing === WIDEST_CHAIRS
    ? [
        {
          field: 'chairs.spacing',
          value: WIDEST_CHAIRS,
          unit: 'mm',
          why: `${commonPractice('').standard}: chairs are not set farther apart, however stiff the bars`,
        },
      ]
    : []
}

function shortly(value: number | null): string {
  return value === null ? '' : String(Number(value.toFixed(1)))
}
