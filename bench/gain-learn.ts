// npx tsx bench/gain-learn.ts: learns the numbers in cure/gain/learned.ts from the open data, whole mixes held out, and prints them.
// npx tsx bench/gain-learn.ts --widen: the factor on the band of early tests alone.
// npx tsx bench/gain-learn.ts --nested FOLDS SEED: learns them anew without the mixes of each fold, then scores that fold
// and prints the factor on the band with the mix given.
import {
  alikeGroups,
  type Covariance,
  inverseOf,
  type OpenMix,
  type OpenProcess,
  openMixes,
  openProcess,
  type Slip,
} from '@castwright/engine/cure/gain'
import {
  chance,
  type HeldOutCase,
  heldOutCases,
  type Learnt,
  restOfFolds,
  scoreOf,
  type Told,
  toldWithMix,
  toldWithoutMix,
} from '@castwright/engine/cure/gain/held-out'
import { descend } from './descend.ts'
import { holdOutLoss } from './gain-loss.ts'
import { fromVector, toVector } from './gain-slope.ts'

/** Where the search begins: plain guesses. A penalty pulls back to them, so that what the data does not tell stays plain. */
const START: Covariance = {
  reach: [4, 4, 4, 4, 4, 4, 4, 4, 4],
  level: 0.3,
  levelStraight: 1,
  levelOwn: 0.1,
  slopeCommon: 0.3,
  slope: 0.03,
  slopeStraight: 0.05,
  slopeOwn: 0.05,
  turn: -0.3,
  turnOwn: -0.3,
  bend: 0.1,
  bendReach: 1.5,
  bendOwn: 0.05,
  bendOwnReach: 1,
  test: 0.05,
}
const PULL = 0.025
const ROUNDS = 18
/** Departure from all other tests, in standard deviations, above which a test of the data is a slip. */
const FITS = 3

/** Learns, finds the slips by what was learned, and learns again with them given their scatter. */
function learn(mixes: readonly OpenMix[]): Learnt {
  const groups = alikeGroups(mixes)
  const slips = slipsOf(mixes, search(mixes, groups, []))
  return { by: search(mixes, groups, slips), slips }
}

function search(mixes: readonly OpenMix[], groups: readonly number[], slips: readonly Slip[]): Covariance {
  const start = toVector(START)
  const found = descend(
    (vector) => {
      const { value, slope } = holdOutLoss(openProcess({ mixes, by: fromVector(vector), slips }), groups)
      const apart = vector.map((each, at) => each - (start[at] ?? 0))
      return {
        value: value + PULL * apart.reduce((sum, each) => sum + each ** 2, 0),
        slope: slope.map((each, at) => each + 2 * PULL * (apart[at] ?? 0)),
      }
    },
    start,
    { rounds: ROUNDS, least: 5e-4 },
  )
  return fromVector(found)
}

/** Tests that do not fit what all others say of them, the worst first, with the scatter that `takeIn` would give them. */
function slipsOf(mixes: readonly OpenMix[], by: Covariance): Slip[] {
  const slips: Slip[] = []
  for (;;) {
    const worst = worstTest(mixes, openProcess({ mixes, by, slips }), slips)
    if (worst === null) return slips
    slips.push(worst)
  }
}

function worstTest(mixes: readonly OpenMix[], process: OpenProcess, slips: readonly Slip[]): Slip | null {
  const size = process.rows.length
  const inverse = inverseOf(process.factor, size)
  let [worst, most]: [Slip | null, number] = [null, FITS]
  for (const [at, { mix, days, value }] of process.rows.entries()) {
    const precision = inverse[at * size + at] as number
    const z = Math.abs(process.weights[at] as number) / Math.sqrt(precision)
    const { mark } = mixes[mix] as OpenMix
    const strength = Number(Math.exp(value).toPrecision(6))
    const found = slips.some((each) => each.mark === mark && each.days === days && each.strength === strength)
    if (found || !(z > most)) continue
    most = z
    worst = { mark, days, strength, scatter: Math.sqrt((z / FITS) ** 4 - 1) / Math.sqrt(precision) }
  }
  return worst
}

/** Early ages, days, from which the band at 28 days is held to: the age that is asked for. */
const HELD_TO = [3, 7, 14]

/**
 * Learns all numbers without each fold and scores the fold, then prints the factor that would make 90 of 100 results lie in
 * the band: what a mix meets that had no part in the learning.
 */
function nested(folds: number, seed: number): void {
  const deal = (last: number) => heldOutCases({ last, late: 28, folds, order: chance(seed) })
  const { foldOf } = deal(7)
  const mixes = openMixes()
  const learnt = Array.from({ length: folds }, (_, fold) =>
    learn(mixes.filter((__, at) => foldOf[at] !== fold)),
  )
  const rest = restOfFolds(foldOf, (fold) => learnt[fold] as Learnt)
  const all: number[] = []
  for (const last of HELD_TO) {
    const { cases } = deal(last)
    all.push(...departures(cases, toldWithMix(cases, rest, 28, 1)))
    console.log(`up to ${last} days`, scoreOf(cases, toldWithMix(cases, rest, 28)))
  }
  console.log('factor on the band', pointOf(all, 0.9))
}

/** The same factor for early tests alone: eight numbers over 339 mixes, so that holding out changes nothing. */
function widening(): number {
  const all = HELD_TO.flatMap((last) => {
    const { cases } = heldOutCases({ last, late: 28, folds: 10, order: chance(1) })
    return departures(cases, toldWithoutMix(cases, 28, 1))
  })
  return Math.max(1, pointOf(all, 0.9))
}

/** Misses in ln strength as shares of the half width of the band. */
function departures(cases: readonly HeldOutCase[], told: readonly Told[]): number[] {
  return cases.map(({ late }, at) => {
    const { strength, high } = told[at] as Told
    return Math.abs(Math.log(late / strength)) / Math.log(high / strength)
  })
}

function pointOf(values: readonly number[], share: number): number {
  return [...values].sort((a, b) => a - b)[Math.floor(share * values.length)] ?? Number.NaN
}

const short = (_: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toPrecision(4)) : value
if (process.argv[2] === '--nested') nested(Number(process.argv[3] ?? 5), Number(process.argv[4] ?? 1))
else if (process.argv[2] === '--widen') console.log(short('', widening()))
else console.log(JSON.stringify(learn(openMixes()), short))
