import type { CodeFamily } from '../codes/family.ts'
import type { ToleranceWhat } from '../codes/quality-rules.ts'
import type { Panel } from '../panel/panel.ts'
import type { Ring } from '../panel/point.ts'
import { distance, type Point } from '../panel/point.ts'
import type { EnteredLimit } from '../steps/facts.ts'
import { STEP_IDS } from '../steps/steps.ts'
import type { Asked } from '../working/asked.ts'
import { commonPractice } from '../working/source.ts'
import type { Yard } from '../yard/yard.ts'
import { familyLimit } from './family-limit.ts'
import { diagonalCorners } from './frame.ts'
import { handlingAsked } from './quality-asked.ts'
import type { PanelTolerance, QualityPlan } from './quality-plan.ts'

export interface PlanQualityInput {
  readonly panel: Panel
  readonly yard: Yard | null
  readonly family: CodeFamily
  /** Limits that an engineer entered for the yard. */
  readonly limits?: Readonly<Record<string, EnteredLimit>>
}

/** One thing to measure: the size as drawn, and the size that its limit grows with. */
interface Measure {
  readonly what: ToleranceWhat
  readonly id: string
  readonly asks: string
  readonly nominal: number | null
  readonly size: number
  readonly note: string
}

const NO_DIAGONALS = 'squareness: the outline has no four corners to run diagonals between'

/**
 * Tolerances of a panel by its family, and what must be seen or measured from the first landing to the hand-over.
 *
 * A tolerance that the family does not confirm is asked for and stays unknown until an engineer enters one.
 */
export function planQuality({ panel, family, limits = {} }: PlanQualityInput): QualityPlan {
  const measures = measuresOf(panel)
  const found = measures.map((measure) => ({ measure, limit: familyLimit({ ...measure, family, limits }) }))
  const tolerances = found.map(({ measure, limit }): PanelTolerance => {
    const base = { what: measure.what, nominal: measure.nominal, unit: 'mm' }
    return limit.known
      ? { ...base, low: limit.value.low, high: limit.value.high, source: limit.value.source }
      : { ...base, low: null, high: null, source: commonPractice('no confirmed value'), unknown: limit.gaps }
  })
  const asked = measures.map((measure, index) => measureAsked(measure, tolerances[index]))
  const order = (item: Asked) => STEP_IDS.indexOf(item.step)
  return {
    tolerances,
    checks: [],
    toRecord: [...asked, ...handlingAsked()].sort((a, b) => order(a) - order(b)),
    assumed: [],
    unknown: [
      ...tolerances.flatMap((tolerance) => tolerance.unknown ?? []),
      ...(measures.some(({ what }) => what === 'squareness') ? [] : [NO_DIAGONALS]),
    ],
  }
}

function measuresOf(panel: Panel): Measure[] {
  const { length, width, drawing } = panel
  const outline = drawing.outline as unknown as Ring
  const diagonals = diagonalCorners(outline)
  const sizes: Measure[] = [
    {
      what: 'length',
      id: 'built-length',
      asks: 'Length, the worst of two lines',
      nominal: length,
      size: length,
      note: 'Near both edges.',
    },
    {
      what: 'width',
      id: 'built-width',
      asks: 'Width, the worst of two lines',
      nominal: width,
      size: width,
      note: 'Near both ends.',
    },
    {
      what: 'thickness',
      id: 'built-thickness',
      asks: 'Thickness, the worst of four readings',
      nominal: drawing.thickness,
      size: drawing.thickness,
      note: '100 mm in from the edges.',
    },
  ]
  const square: Measure[] =
    diagonals === null
      ? []
      : [
          {
            what: 'squareness',
            id: 'built-squareness',
            asks: `Difference of the diagonals${drawnDifference(outline, diagonals)}`,
            nominal: 0,
            size: longerDiagonal(outline, diagonals),
            note: 'Equal diagonals alone do not prove square: the sides count too.',
          },
        ]
  return [
    ...sizes,
    ...square,
    {
      what: 'bow',
      id: 'built-bow',
      asks: 'Bow: middle of the long edge from the line of its ends',
      nominal: 0,
      size: Math.max(length, width),
      note: 'Towards the face that was up: plus.',
    },
    {
      what: 'warp',
      id: 'built-warp',
      asks: 'Warp: fourth corner from the plane of the other three',
      nominal: 0,
      size: Math.min(length, width),
      note: 'Corners in order around the panel.',
    },
    {
      what: 'flatness',
      id: 'built-flatness',
      asks: 'Largest gap under a straightedge of 3 m',
      nominal: 0,
      size: 3000,
      note: 'On the face that was up in the mould.',
    },
  ]
}

function measureAsked(measure: Measure, tolerance: PanelTolerance | undefined): Asked {
  const base = {
    id: measure.id,
    step: 'as-built',
    what: measure.asks,
    kind: 'number',
    unit: 'mm',
    note: measure.note,
  } as const
  if (tolerance === undefined || tolerance.low === null || tolerance.high === null) {
    return {
      ...base,
      source: commonPractice('no confirmed value'),
      unknown: tolerance?.unknown ?? [`${measure.what}: no confirmed value`],
    }
  }
  const nominal = measure.nominal ?? 0
  return { ...base, low: nominal + tolerance.low, high: nominal + tolerance.high, source: tolerance.source }
}

function lengths(outline: Ring, [i, j, k, l]: readonly number[]): [number, number] {
  const at = (index: number | undefined) => outline[index ?? 0] as Point
  return [distance(at(i), at(k)), distance(at(j), at(l))]
}

function longerDiagonal(outline: Ring, four: readonly number[]): number {
  return Math.max(...lengths(outline, four))
}

function drawnDifference(outline: Ring, four: readonly number[]): string {
  const [first, second] = lengths(outline, four)
  const drawn = Math.round(Math.abs(first - second))
  return drawn === 0 ? '' : `, less the ${drawn} mm that are drawn`
}
