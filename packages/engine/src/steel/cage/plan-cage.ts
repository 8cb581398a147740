import type { CodeFamily } from '../../codes/family.ts'
import type { Point } from '../../panel/point.ts'
import { type Check, compare } from '../../working/check.ts'
import { notAboveZero } from '../../working/guard.ts'
import { enteredBy } from '../../working/source.ts'
import { type Assumed, known, unknown, type Worked } from '../../working/worked.ts'
import { gradeOf } from '../mats.ts'
import type { SteelPlan } from '../steel-plan.ts'
import { type LayerRows, layerRows, type MatRowLine } from '../tie-plan/mat-rows.ts'
import { tiedCrossings } from '../tie-plan/tie-plan.ts'
import { cageMass } from './cage-mass.ts'
import type { CagePlan } from './cage-plan.ts'
import { type Craning, craning, type Picks } from './craning.ts'

export interface CageInput {
  readonly steel: Pick<SteelPlan, 'bars' | 'placed' | 'laps' | 'mass'>
  readonly family: CodeFamily
  readonly picks?: Picks
  /** Largest sag between hooks that the yard allows, mm. */
  readonly sag?: number
  /** Times the weight while the hoist starts and stops; assumed where missing. */
  readonly hoist?: number
  /** Both layers are held to each other so that they bend together; the hooked one carries alone where missing. */
  readonly together?: boolean
}

/** Times the weight while a hoist starts and stops. */
export const ASSUMED_HOIST = 1.5
const MOST_HOOKS: Picks = { x: 12, y: 8 }

const CAUTIONS: CagePlan['cautions'] = [
  {
    order: 'Nobody under the cage, nobody riding it, tag lines on.',
    text: 'Hook under crossings of bars, never on a tie: wire holds bars in place and carries nothing.',
  },
  {
    order: 'Lift it a hand’s width first and look.',
    text: 'Sag is computed for bars that do not slip in their ties and a weight that is spread evenly. Set it down and add hooks where it sags more than planned, and hook over the centre of mass. The person in charge of the lift decides.',
  },
]

/**
 * Mass, centre of mass and craning in of a cage. What is not entered is assumed and shown, or unknown: without picks and without a
 * largest sag there is nothing to say about the hooks.
 */
export function planCage(input: CageInput): CagePlan {
  const { steel } = input
  const weight = cageMass(steel)
  const rows = carrying(steel, input.together ?? false)
  const bad = notAboveZero({ sag: input.sag ?? 1, hoist: input.hoist ?? 1 })
  const hoist = input.hoist ?? ASSUMED_HOIST
  const base: Lifted | null =
    rows === null || weight.mass === null || bad.length > 0 ? null : { rows, mass: weight.mass, hoist }
  const missing = [
    ...bad,
    ...(rows === null ? ['steel: a mat to hook'] : []),
    ...(weight.mass === null ? ['mass of every bar'] : []),
  ]
  const yields = yieldOf(input)
  const fewest = base === null ? unknown(...missing) : fewestPicks(base, input.sag, yields)
  const picks: Worked<Picks> = input.picks === undefined ? fewest : known(input.picks, [])
  const hung =
    base === null ? unknown(...missing) : picks.known ? craningOf(base, picks.value) : unknown(...picks.gaps)
  const hooks = hung.known && rows !== null ? nearestCrossings(hung.value.at, rows) : []
  return {
    ...weight,
    ...extentOf(steel),
    craning: hung,
    fewest,
    hooks,
    aside: asideOf(hooks, weight.centre.known ? weight.centre.value : null),
    checks: checksOf(input, hung, yields),
    working: [...(weight.centre.known ? weight.centre.working : []), ...(hung.known ? hung.working : [])],
    assumed: assumedOf(input, steel),
    cautions: CAUTIONS,
  }
}

interface Lifted {
  readonly rows: Pick<LayerRows, 'alongX' | 'alongY'>
  readonly mass: number
  readonly hoist: number
}

function craningOf({ rows, mass, hoist }: Lifted, picks: Picks): Worked<Craning> {
  return craning({ ...rows, mass, hoist, picks })
}

/** The layer that is hooked, the upper one of two; both together where they bend as one. */
function carrying(
  steel: CageInput['steel'],
  together: boolean,
): { readonly alongX: readonly MatRowLine[]; readonly alongY: readonly MatRowLine[] } | null {
  const layers = layerRows(steel)
  const upper = layers.at(-1)
  if (upper === undefined) return null
  if (!together) return upper
  return {
    alongX: layers.flatMap((layer) => layer.alongX),
    alongY: layers.flatMap((layer) => layer.alongY),
  }
}

function fewestPicks(base: Lifted, limit: number | undefined, yields: Worked<number>): Worked<Picks> {
  if (limit === undefined) return unknown('cage.sag: the largest sag between hooks that the yard allows, mm')
  if (!yields.known) return yields
  let best: { picks: Picks; sag: number } | null = null
  for (let x = 2; x <= MOST_HOOKS.x; x += 1) {
    for (let y = 2; y <= MOST_HOOKS.y; y += 1) {
      const hung = craningOf(base, { x, y })
      if (!hung.known) return hung
      const { sag, stress } = hung.value
      if (sag > limit || stress > yields.value) continue
      const count = best === null ? Number.POSITIVE_INFINITY : best.picks.x * best.picks.y
      if (best === null || x * y < count || (x * y === count && sag < best.sag))
        best = { picks: { x, y }, sag }
    }
  }
  return best === null
    ? unknown(
        `cage: ${MOST_HOOKS.x} by ${MOST_HOOKS.y} hooks do not keep the sag within ${limit} mm and the bars below yield`,
      )
    : known(best.picks, [])
}

/** Least yield among the bars of the mats, MPa. */
function yieldOf({ steel, family }: CageInput): Worked<number> {
  const mats = new Set(steel.placed.filter(({ use }) => use === 'mat').map(({ mark }) => mark))
  let least: number | null = null
  for (const { mark, grade } of steel.bars) {
    if (!mats.has(mark)) continue
    const found = gradeOf(family.steel, grade)
    if (found === null) return unknown(`grade: ${grade} is no grade of this code family`)
    least = Math.min(least ?? found.yield, found.yield)
  }
  return least === null ? unknown('grade: of the bars of the mats') : known(least, [])
}

function nearestCrossings(at: readonly Point[], rows: Pick<LayerRows, 'alongX' | 'alongY'>): Point[] {
  const { x, y } = tiedCrossings(rows)
  if (x.length === 0) return []
  return at.map(([px, py]): Point => {
    let [best, least] = [0, Number.POSITIVE_INFINITY]
    for (let k = 0; k < x.length; k += 1) {
      const away = ((x[k] as number) - px) ** 2 + ((y[k] as number) - py) ** 2
      if (away < least) [best, least] = [k, away]
    }
    return [x[best] as number, y[best] as number]
  })
}

function asideOf(hooks: readonly Point[], centre: readonly [number, number, number] | null): Point | null {
  if (hooks.length === 0 || centre === null) return null
  const mean = (axis: 0 | 1): number => hooks.reduce((sum, hook) => sum + hook[axis], 0) / hooks.length
  return [centre[0] - mean(0), centre[1] - mean(1)]
}

function extentOf({ placed }: CageInput['steel']): { readonly length: number; readonly width: number } {
  const span = (axis: 0 | 1): number => {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const { path } of placed) {
      for (const point of path) {
        low = Math.min(low, point[axis])
        high = Math.max(high, point[axis])
      }
    }
    return high >= low ? high - low : 0
  }
  return { length: span(0), width: span(1) }
}

/** Only where the yard entered what it allows: nobody else sets a limit to the sag of a cage. */
function checksOf({ sag, family, steel }: CageInput, hung: Worked<Craning>, yields: Worked<number>): Check[] {
  if (sag === undefined) return []
  const shared = { step: 'set', sense: 'at most', working: hung.known ? hung.working : [] } as const
  const missing = hung.known ? [] : hung.gaps
  return [
    compare({
      ...shared,
      id: 'cage-sag',
      what: 'Sag of the cage between its hooks',
      demand: hung.known ? hung.value.sag : null,
      limit: sag,
      unit: 'mm',
      source: enteredBy('the yard: sag of a cage'),
      missing,
    }),
    compare({
      ...shared,
      id: 'cage-stress',
      what: 'Bars of the cage between its hooks, below yield',
      demand: hung.known ? hung.value.stress : null,
      limit: yields.known ? yields.value : null,
      unit: 'MPa',
      source: gradeSource(steel, family),
      missing: [...missing, ...(yields.known ? [] : yields.gaps)],
    }),
  ]
}

function gradeSource({ bars }: CageInput['steel'], family: CodeFamily): Check['source'] {
  const grades = bars.map(({ grade }) => gradeOf(family.steel, grade))
  return grades.find((grade) => grade !== null)?.source ?? enteredBy('the drawing')
}

function assumedOf({ hoist, together }: CageInput, steel: CageInput['steel']): Assumed[] {
  const assumed: Assumed[] = []
  if (hoist === undefined) {
    assumed.push({
      field: 'cage.hoist',
      value: ASSUMED_HOIST,
      unit: '',
      why: 'times the weight while the hoist starts and stops; none was entered',
    })
  }
  if (together === undefined && layerRows(steel).length > 1) {
    assumed.push({
      field: 'cage.together',
      value: 'no',
      unit: '',
      why: 'the upper layer is hooked and carries all alone; nobody said that the layers are held to each other',
    })
  }
  return assumed
}
