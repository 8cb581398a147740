// npx tsx bench/gain-population.ts: learns the law over all mixes in cure/gain/learned.ts, and prints it.
import {
  factorOf,
  type OpenMix,
  openMixes,
  type Population,
  populationLaw,
} from '@castwright/engine/cure/gain'
import { descend, type Sloped } from './descend.ts'

const START: Population = {
  mean: 3.5,
  level: 0.4,
  slopeMean: 0.4,
  slope: 0.1,
  turn: -0.3,
  bend: 0.1,
  bendReach: 1,
  test: 0.05,
}
const NAMES = Object.keys(START) as (keyof Population)[]
const PULL = 0.004
const EARLY = [3, 7, 14]
const DEGREES = 8

function fromVector(vector: readonly number[]): Population {
  const value = (name: keyof Population, x: number) => {
    if (name === 'mean') return x
    return name === 'turn' ? Math.tanh(x) : Math.exp(x)
  }
  return Object.fromEntries(
    NAMES.map((name, at) => [name, value(name, vector[at] ?? 0)]),
  ) as unknown as Population
}

const START_VECTOR = NAMES.map((name) => {
  const value = START[name]
  if (name === 'mean') return value
  return name === 'turn' ? Math.atanh(value) : Math.log(value)
})

/** Rests of `L⁻¹ r` and the diagonal of L for the tests of a mix at some places. */
function whitened(
  mix: OpenMix,
  places: readonly number[],
  by: Population,
): { z: number; deviation: number }[] {
  const tests = places.map((place) => mix.tests[place] as OpenMix['tests'][number])
  const n = tests.length
  const { mean, covariance } = populationLaw(
    tests.map(({ days }) => days),
    by,
  )
  for (let i = 0; i < n; i += 1) covariance[i * n + i] = (covariance[i * n + i] as number) + by.test ** 2
  const factor = factorOf(covariance, n)
  if (factor === null) throw new Error('population: covariance found not positive definite')
  const solved: { z: number; deviation: number }[] = []
  for (const [i, { strength }] of tests.entries()) {
    let rest = Math.log(strength) - (mean[i] as number)
    for (const [k, before] of solved.entries()) rest -= (factor[i * n + k] as number) * before.z
    const deviation = factor[i * n + i] as number
    solved.push({ z: rest / deviation, deviation })
  }
  return solved
}

function student({ z, deviation }: { z: number; deviation: number }): number {
  return ((DEGREES + 1) / 2) * Math.log1p(z ** 2 / DEGREES) + Math.log(deviation)
}

/** Mean Student loss of all tests of a mix one after the other, and of those at 28 days after early ones. */
function loss(mixes: readonly OpenMix[], by: Population): number {
  const all: number[] = []
  const late: number[] = []
  for (const mix of mixes) {
    const distinct = mix.tests.flatMap(({ days, strength }, at) =>
      mix.tests.findIndex((test) => test.days === days && test.strength === strength) === at ? [at] : [],
    )
    all.push(...whitened(mix, distinct, by).map(student))
    for (const last of EARLY) {
      const early = distinct.filter((at) => (mix.tests[at]?.days ?? 0) <= last)
      const target = distinct.find((at) => mix.tests[at]?.days === 28)
      if (early.length === 0 || target === undefined) continue
      late.push(student(whitened(mix, [...early, target], by).at(-1) as { z: number; deviation: number }))
    }
  }
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length
  return mean(all) + mean(late)
}

export function learnPopulation(mixes: readonly OpenMix[]): Population {
  const value = (vector: readonly number[]) =>
    loss(mixes, fromVector(vector)) +
    PULL * vector.reduce((sum, each, at) => sum + (each - (START_VECTOR[at] ?? 0)) ** 2, 0)
  const at = (vector: readonly number[]): Sloped => ({
    value: value(vector),
    slope: vector.map(
      (each, i) => (value(vector.with(i, each + 1e-4)) - value(vector.with(i, each - 1e-4))) / 2e-4,
    ),
  })
  return fromVector(descend(at, START_VECTOR, { rounds: 60, least: 1e-6 }))
}

if (process.argv[1]?.endsWith('gain-population.ts'))
  console.log(
    JSON.stringify(learnPopulation(openMixes()), (_, value) =>
      typeof value === 'number' ? Number(value.toPrecision(4)) : value,
    ),
  )
