import { distance, type Point } from '../../panel/point.ts'
import { STATICS } from '../../working/source.ts'
import { type Assumed, known, type Step, unknown, type Worked } from '../../working/worked.ts'
import { type Holding, holdings, type LegRun, legRuns, onlyHolding } from './balanced-shares.ts'
import { equalSteps, holdingStep } from './holding-step.ts'
import { type LegPlaces, meanOf } from './leg-places.ts'
import { countedShare, legsCounted } from './legs-counted.ts'
import type { RiggedInput } from './rigging-types.ts'
import { unevenShares } from './uneven-legs.ts'
import { unevenSteps } from './uneven-steps.ts'

export interface LegShares {
  readonly legs: readonly LegShare[]
  readonly determinate: boolean
  readonly counted: number
  /** Difference of length between two legs at which the first goes slack, mm. */
  readonly slackError: number | null
}

export interface LegShare {
  readonly share: number | null
  readonly uneven: { readonly least: number; readonly most: number } | null
  readonly counted: number
  readonly vertical: number
  readonly from: string
}

/** Shares that the caller gives may be off the balance by this, of the load and of the spread of the picks. */
const BALANCE = 0.01

/**
 * Vertical load of each leg: on points that do not give, with legs of uneven length, and by the legs that count; the greatest governs.
 *
 * Unknown where a pick would have to push, where the centre of gravity is outside of the picks, or where the shares given are out of balance.
 */
export function legShares(input: RiggedInput, places: LegPlaces): Worked<LegShares> {
  const { rigging, picks, load, hang } = input
  const points = hang === 'row' ? onLine(input, places) : picks.map(({ at }) => at)
  const centre: Point = hang === 'row' ? [0, 0] : input.centre
  const runs = legRuns({ points, equalised: rigging.equalised === true, pairs: rigging.pairs })
  const only = onlyHolding({ runs, centre, hang })
  const pushed = pushing(input, runs, only)
  if (pushed !== null) return pushed
  const ways = holdings({ runs, points, centre, hang })
  if (ways.length === 0) return outside(rigging.mark, runs, picks.length)
  const balanced = input.shares === undefined ? null : imbalance(points, centre, load, input.shares)
  if (balanced !== null) return balanced
  const fixed = byStatics(input, points, centre, runs, only)
  const shares = input.shares ?? fixed?.shares ?? null
  const loose = looseOf(input, places, points, centre, runs, ways)
  const count = legsCounted(input, only !== null)
  const counting = { input, runs, ways, centre, count: count.value, statics: fixed?.shares ?? null, shares }
  const working: Step[] = [...count.working, ...(fixed?.working ?? []), ...loose.working]
  const legs = picks.map(({ mark }, i): LegShare => {
    const worst = countedShare(counting, i)
    working.push(...worst.working)
    const share = shares?.[i] ?? null
    const uneven = loose.value === null ? null : { least: loose.value.least[i]!, most: loose.value.most[i]! }
    const cases: [number, string][] = [[worst.value, worst.from]]
    if (share !== null)
      cases.push([share, input.shares === undefined ? 'statics' : 'the bending of the panel'])
    if (uneven !== null) cases.push([uneven.most, `legs uneven by ${rigging.error} mm`])
    const most = Math.max(...cases.map(([value]) => value))
    // Of cases alike but for the error of a solve the first: the rule that was asked for.
    const from = cases.find(([value]) => value >= most * (1 - 1e-6))![1]
    working.push({
      symbol: `V ${mark}`,
      formula: `max(${['Rc', ...(share === null ? [] : ['R']), ...(uneven === null ? [] : ['Ru'])].join(', ')})`,
      given: {
        Rc: worst.value,
        ...(share === null ? {} : { R: share }),
        ...(uneven === null ? {} : { Ru: uneven.most }),
      },
      result: most,
      unit: 'kN',
      source: STATICS,
      note: `${from}; R on points that do not give, Ru with uneven legs, Rc by the legs that count`,
    })
    return { share, uneven, counted: worst.value, vertical: most, from }
  })
  return known(
    { legs, determinate: only !== null, counted: count.value, slackError: loose.slackError },
    working,
    [...count.assumed, ...loose.assumed],
  )
}

/** Places along the row, from the foot of the centre of gravity. */
function onLine({ picks }: RiggedInput, { hook, along }: LegPlaces): Point[] {
  return picks.map(({ at }): Point => [(at[0] - hook[0]) * along[0] + (at[1] - hook[1]) * along[1], 0])
}

/** A pick that would have to push down, by the shares given or by statics. */
function pushing(
  { picks, load, shares }: RiggedInput,
  runs: readonly LegRun[],
  only: Holding | null,
): Worked<never> | null {
  const forces =
    shares ?? (only === null ? null : perLeg(runs, only, picks.length).map((share) => share * load))
  if (forces === null) return null
  const down = picks.flatMap(({ mark }, i) =>
    forces[i]! < -1e-9 * load
      ? [`insert ${mark}: would have to push down with ${(-forces[i]!).toFixed(3)} kN`]
      : [],
  )
  return down.length > 0 ? unknown(...down) : null
}

function outside(mark: string, runs: readonly LegRun[], legs: number): Worked<never> {
  return runs.some((run) => run.legs.length > 1)
    ? unknown(
        `rigging ${mark}: the centre of gravity is too far from the middle of its ${legs} running legs to hang level`,
      )
    : unknown('picks: the centre of gravity is outside of them')
}

function imbalance(
  points: readonly Point[],
  centre: Point,
  load: number,
  shares: readonly number[],
): Worked<never> | null {
  const middle = meanOf(points)
  const spread = Math.max(1, ...points.map((at) => distance(at, middle)))
  const sum = shares.reduce((all, share) => all + share, 0)
  const at = (axis: 0 | 1): number =>
    shares.reduce((all, share, i) => all + share * points[i]![axis], 0) / sum
  const off = Math.hypot(at(0) - centre[0], at(1) - centre[1])
  if (Math.abs(sum - load) > BALANCE * load)
    return unknown(`shares: their sum ${sum.toFixed(3)} kN is not the load ${load.toFixed(3)} kN`)
  return off > BALANCE * spread
    ? unknown(`shares: their middle is ${off.toFixed(0)} mm off the centre of gravity`)
    : null
}

/** Share of each leg from that of the runs. */
function perLeg(runs: readonly LegRun[], holding: Holding, n: number): number[] {
  const out = new Array<number>(n).fill(0)
  for (const [g, { legs }] of runs.entries()) for (const i of legs) out[i] = holding[g]! / legs.length
  return out
}

/** Loads of all legs where statics is enough, with their working. */
function byStatics(
  { picks, load, rigging }: RiggedInput,
  points: readonly Point[],
  centre: Point,
  runs: readonly LegRun[],
  only: Holding | null,
): { readonly shares: readonly number[]; readonly working: readonly Step[] } | null {
  if (only === null) return null
  if (runs.length === 1 && rigging.pairs === undefined) {
    const marks = picks.map(({ mark }) => mark)
    const working = equalSteps({ marks, points, centre, load })
    return { shares: working.map(({ result }) => result as number), working }
  }
  const working = picks.map(({ mark }, i): Step => {
    const own = runs.find(({ legs }) => legs.includes(i))!
    const carrying = [own, ...runs.filter((run) => run !== own)]
    const note = own.legs.length > 1 ? 'both ends of a running sling alike' : 'balance of the legs'
    return holdingStep({ symbol: `R ${mark}`, load, centre, carrying, note })
  })
  return { shares: working.map(({ result }) => result as number), working }
}

interface Loose {
  readonly value: { readonly least: readonly number[]; readonly most: readonly number[] } | null
  readonly slackError: number | null
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
}

const NOTHING_LOOSE: Loose = { value: null, slackError: null, working: [], assumed: [] }

/** Legs of uneven length, where a length error is entered and it changes anything. */
function looseOf(
  input: RiggedInput,
  places: LegPlaces,
  points: readonly Point[],
  centre: Point,
  runs: readonly LegRun[],
  ways: readonly Holding[],
): Loose {
  const { rigging, load, hang } = input
  const { error, stiffness } = rigging
  if (error === undefined || runs.length <= (hang === 'row' ? 2 : 3)) return NOTHING_LOOSE
  const bends = hang === 'flat' && input.compliance !== undefined && input.shares !== undefined
  const cosines = places.legs.map(({ angle }) => Math.cos((angle * Math.PI) / 180))
  const assumed: Assumed[] = []
  if (stiffness === undefined) {
    const why = 'not entered: legs that do not stretch share worst'
    assumed.push({ field: `rigging ${rigging.mark}: stiffness`, value: 'rigid', unit: '', why })
  }
  if (!bends && hang === 'flat') {
    const why = 'its bending was not given: a panel that does not bend makes uneven legs worse'
    assumed.push({ field: 'panel between the picks', value: 'rigid', unit: '', why })
  }
  const parts = {
    load,
    centre,
    points,
    hang,
    runs,
    shares: bends ? (input.shares ?? null) : null,
    compliance: bends ? (input.compliance ?? null) : null,
    give: cosines.map((cos) => (stiffness === undefined ? 0 : 1 / (stiffness * cos ** 2))),
    off: cosines.map((cos) => error / (2 * cos)),
  }
  const found = error > 0 || stiffness !== undefined || bends ? unevenShares(parts) : null
  if (found !== null) {
    const slackError = found.slackAt === null || error === 0 ? null : found.slackAt * error
    return { value: found, slackError, working: unevenSteps({ input, places, parts, found }), assumed }
  }
  if (error === 0) return { ...NOTHING_LOOSE, assumed }
  // Nothing gives way: any difference of length takes the load off a leg.
  const perRun = runs.map(({ legs }, g) => ways.map((way) => (way[g]! * load) / legs.length))
  const pick = (choose: (...values: number[]) => number): number[] =>
    perLeg(
      runs,
      perRun.map((values, g) => choose(...values) * runs[g]!.legs.length),
      points.length,
    )
  const value = { least: pick(Math.min), most: pick(Math.max) }
  return { value, slackError: null, working: [], assumed }
}
