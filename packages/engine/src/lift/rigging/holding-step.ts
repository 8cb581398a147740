import { distance, type Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import { equalParts, type LegRun } from './balanced-shares.ts'

interface HoldingStep {
  readonly symbol: string
  /** kN */
  readonly load: number
  readonly centre: Point
  /** The runs that carry, one to three; the first is the one whose legs are asked for. */
  readonly carrying: readonly LegRun[]
  readonly note: string
}

/** Share of each leg of the first of one, two or three runs that hold the load in balance, kN. */
export function holdingStep({ symbol, load, centre, carrying, note }: HoldingStep): Step {
  const [a, b, c] = carrying.map(({ at }) => at)
  const n = carrying[0]?.legs.length ?? 1
  const base = { symbol, unit: 'kN', source: STATICS, note }
  if (a === undefined || b === undefined) {
    return { ...base, formula: 'W / m', given: { W: load, m: n }, result: load / n }
  }
  if (c === undefined) {
    const l = distance(a, b)
    const along = ((centre[0] - a[0]) * (b[0] - a[0]) + (centre[1] - a[1]) * (b[1] - a[1])) / l
    const result = (load * (l - along)) / (l * n)
    return { ...base, formula: 'W (l − a) / (l m)', given: { W: load, l, a: along, m: n }, result }
  }
  const [xg, yg] = centre
  const [xb, yb, xc, yc] = [b[0], b[1], c[0], c[1]]
  const whole = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  return {
    ...base,
    formula: 'W ((xb − xg) (yc − yg) − (yb − yg) (xc − xg)) / (A2 m)',
    given: { W: load, xb, yb, xc, yc, xg, yg, A2: whole, m: n },
    result: (load * ((xb - xg) * (yc - yg) - (yb - yg) * (xc - xg))) / (whole * n),
    note: `${note}; A2 twice the area between them`,
  }
}

/** Shares of legs that one sling runs through, kN: equal, and as much uneven as the balance asks. */
export function equalSteps({
  marks,
  points,
  centre,
  load,
}: {
  readonly marks: readonly string[]
  readonly points: readonly Point[]
  readonly centre: Point
  readonly load: number
}): Step[] {
  const { middle, a, b } = equalParts(points, centre)
  const n = points.length
  return points.map(([px, py], i): Step => {
    const [x, y] = [px - middle[0], py - middle[1]]
    return {
      symbol: `R ${marks[i]}`,
      formula: 'W (1 / n + a x + b y)',
      given: { W: load, n, a, x, b, y },
      result: load * (1 / n + a * x + b * y),
      unit: 'kN',
      source: STATICS,
      note: 'equalised: alike but for the balance, a and b per mm, x and y from the middle of the picks',
    }
  })
}
