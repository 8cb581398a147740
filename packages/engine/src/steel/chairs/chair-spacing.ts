import type { Layer } from '../../panel/drawing.ts'
import { type Check, compare } from '../../working/check.ts'
import { commonPractice, enteredBy, type Source, STATICS } from '../../working/source.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import { gradeOf } from '../mats.ts'
import { type MatGridSag, matGridSag } from './mat-grid.ts'
import type { CarriedMat, ChairsInput } from './plan-chairs.ts'

/** One person with tools, kN. */
export const ASSUMED_PERSON = 1
/** Chairs are never planned farther apart than this, mm. */
export const WIDEST_CHAIRS = 1000
const CLOSEST = 200
const STEP = 50
/** Chairs come in heights of 5 mm. */
const CHAIR_STEP = 5

export interface ChairSpacingFound {
  /** mm; null where not known. */
  readonly spacing: number | null
  readonly source: Source
  readonly sag: number | null
  readonly raise: number
  readonly checks: readonly Check[]
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

type SpacingInput = ChairsInput & CarriedMat & { readonly layer: Layer }

/**
 * How far apart the chairs of a layer may be: the yard's own spacing, else the family's rule, else the widest at which the mat sags
 * within the limit and no bar yields.
 */
export function chairSpacing(input: SpacingInput): ChairSpacingFound {
  const { diameter, family } = input
  const rule = family.mould.chairSpacing?.({ diameter }) ?? null
  const person = input.person ?? ASSUMED_PERSON
  const seat = sagLimit(input)
  const base = { raise: 0, working: [], assumed: [], gaps: [] }
  if (rule !== null) {
    const spacing = input.spacing ?? rule.spacing
    const sag = sagAt(input, spacing, person)
    return {
      ...base,
      spacing,
      source: input.spacing === undefined ? rule.source : enteredBy('the yard: spacing of chairs'),
      sag: sag?.sag ?? null,
      checks: [ruleCheck(input, spacing, rule)],
      working: sag === null ? [] : [sagStep(input, spacing, person, sag)],
      assumed: sag === null ? [] : personAssumed(input),
    }
  }
  const steel = yieldOf(input)
  const gaps = [...seat.gaps, ...steel.gaps]
  const spacing =
    input.spacing ??
    (seat.limit === null || steel.yield === null ? null : widest(input, person, seat.limit, steel.yield))
  if (spacing === null && gaps.length === 0) {
    gaps.push(
      `chairs, ${input.layer} layer: no spacing of ${CLOSEST} mm or more keeps the sag within ${shortly(seat.limit)} mm and the bars below yield`,
    )
  }
  const sag = spacing === null ? null : sagAt(input, spacing, person)
  return {
    spacing,
    source: input.spacing === undefined ? STATICS : enteredBy('the yard: spacing of chairs'),
    sag: sag?.sag ?? null,
    raise: seat.raise,
    checks: sagChecks(input, { spacing, person, sag, seat, yields: steel }),
    working: sag === null || spacing === null ? [] : [sagStep(input, spacing, person, sag)],
    assumed: [...personAssumed(input), ...seat.assumed, ...capAssumed(spacing)],
    gaps,
  }
}

function widest(input: SpacingInput, person: number, limit: number, yields: number): number | null {
  for (let spacing = WIDEST_CHAIRS; spacing >= CLOSEST; spacing -= STEP) {
    const found = sagAt(input, spacing, person)
    if (found !== null && found.sag <= limit && found.stress <= yields) return spacing
  }
  return null
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

interface Seat {
  readonly limit: number | null
  readonly raise: number
  readonly source: Source
  readonly assumed: readonly Assumed[]
  readonly gaps: readonly string[]
}

/**
 * How far the mat may come down. Mould steel may use what the family allows under the drawn cover, and what its chairs stand
 * higher; where nothing is allowed under it, chairs half of the upper tolerance higher are assumed. Top steel may use what is
 * allowed over its cover.
 */
function sagLimit({ layer, sag, panel, family }: SpacingInput): Seat {
  if (sag !== undefined)
    return { limit: sag, raise: 0, source: enteredBy('the yard: sag of the mat'), assumed: [], gaps: [] }
  const cover = panel.drawing.cover?.[layer] ?? Number.NaN
  const { below, above, source } = family.mould.coverTolerance({
    thickness: panel.drawing.thickness,
    cover,
  })
  const none = (side: string): Seat => ({
    limit: null,
    raise: 0,
    source,
    assumed: [],
    gaps: [
      `chairs, ${layer} layer: sag of the mat: no confirmed value ${side} the drawn cover; enter the largest sag or the spacing`,
    ],
  })
  if (layer === 'top')
    return above === null ? none('over') : { limit: above, raise: 0, source, assumed: [], gaps: [] }
  if (below === null) return none('under')
  if (below > 0) return { limit: below, raise: 0, source, assumed: [], gaps: [] }
  const raise = above === null ? 0 : Math.floor(above / 2 / CHAIR_STEP) * CHAIR_STEP
  if (raise === 0) return none('under')
  return {
    limit: raise,
    raise,
    source,
    assumed: [
      {
        field: 'chairs.raise',
        value: raise,
        unit: 'mm',
        why: 'nothing is allowed under the drawn cover: chairs stand so much higher, within what is allowed over it',
      },
    ],
    gaps: [],
  }
}

function yieldOf({ carried, crossing, steel, family }: SpacingInput): {
  readonly yield: number | null
  readonly source: Source
  readonly gaps: string[]
} {
  const marks = new Set([...carried, ...crossing].flatMap((row) => row.marks))
  const words = [...new Set(steel.bars.filter((bar) => marks.has(bar.mark)).map((bar) => bar.grade))]
  const grades = words.map((word) => gradeOf(family.steel, word))
  const gaps = words
    .filter((_, i) => grades[i] === null)
    .map((word) => `grade: ${word} is no grade of this code family`)
  const least = grades.reduce(
    (low, grade) => (grade !== null && (low === null || grade.yield < low.yield) ? grade : low),
    null,
  )
  return gaps.length > 0 || least === null
    ? { yield: null, source: STATICS, gaps: gaps.length > 0 ? gaps : ['grade: of the bars on the chairs'] }
    : { yield: least.yield, source: least.source, gaps }
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

function sagChecks(
  input: SpacingInput,
  {
    spacing,
    person,
    sag,
    seat,
    yields,
  }: {
    readonly spacing: number | null
    readonly person: number
    readonly sag: MatGridSag | null
    readonly seat: Seat
    readonly yields: ReturnType<typeof yieldOf>
  },
): Check[] {
  const { layer } = input
  const shared = {
    step: 'set',
    sense: 'at most',
    working: sag === null || spacing === null ? [] : [sagStep(input, spacing, person, sag)],
    assumed: [...personAssumed(input), ...seat.assumed],
    note: 'One person steps on a crossing between chairs; ends beyond the last chair are not stepped on.',
  } as const
  return [
    compare({
      ...shared,
      id: `chair-sag:${layer}`,
      what: `Sag of the ${layer} layer between its chairs`,
      demand: sag?.sag ?? null,
      limit: seat.limit,
      unit: 'mm',
      source: seat.source,
      missing: seat.gaps,
    }),
    compare({
      ...shared,
      id: `chair-stress:${layer}`,
      what: `Bars of the ${layer} layer under a person, so that they come back`,
      demand: sag?.stress ?? null,
      limit: yields.yield,
      unit: 'MPa',
      source: yields.source,
      missing: yields.gaps,
    }),
  ]
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
