import type { StrengthCurve } from '../yard/yard.ts'

/** Age at the reference temperature, h, and strength, MPa. */
export type AgedTest = readonly [age: number, strength: number]

type Fitted = Extract<StrengthCurve, { form: 'hyperbolic' | 'exponential' }>

export interface CurveFit {
  readonly curve: Fitted
  /** Parameters that the tests fixed: 2 or 3. */
  readonly parameters: number
  /** Sum of squared differences, MPa². */
  readonly squares: number
  /** How far the fit leans on one test more at an age: h in √(1 + h) of the band for one later test. */
  readonly leverage: (age: number) => number
}

export type FitForm = 'hyperbolic' | 'hyperbolic from 0' | 'exponential'

/** A curve with the ultimate strength taken out: it enters as a factor, so least squares gives it directly. */
interface Shape {
  readonly at: (age: number, p: readonly number[]) => number
  readonly starts: readonly (readonly number[])[]
  readonly lowest: readonly number[]
  readonly highest: readonly number[]
}

/**
 * Least-squares curve through strength tests, in MPa. Null where the tests do not fix it: fewer different ages than
 * parameters, or no strength in them. Ages and strengths above 0.
 *
 * Searches the one or two parameters that bend the curve (logarithms of rate, time or shape) by pattern search from
 * several starts, the ultimate strength solved exactly at each trial.
 */
export function fitCurve(tests: readonly AgedTest[], form: FitForm): CurveFit | null {
  const parameters = form === 'hyperbolic from 0' ? 2 : 3
  if (new Set(tests.map(([age]) => age)).size < parameters) return null
  const shape = shapeOf(form, tests)
  const squaresAt = (p: readonly number[]) => squares(tests, shape, p)
  let best: readonly number[] | null = null
  for (const start of shape.starts) {
    const found = patternSearch(squaresAt, start, shape.lowest, shape.highest)
    if (best === null || squaresAt(found) < squaresAt(best)) best = found
  }
  if (best === null || !Number.isFinite(squaresAt(best))) return null
  const ultimate = factor(tests, shape, best)
  if (!(ultimate > 0)) return null
  return {
    curve: curveOf(form, ultimate, best),
    parameters,
    squares: squaresAt(best),
    leverage: leverageOf(tests, shape, ultimate, best),
  }
}

function curveOf(form: FitForm, ultimate: number, p: readonly number[]): Fitted {
  const [first = 0, second = 0] = p
  if (form === 'exponential')
    return { form: 'exponential', ultimate, tau: Math.exp(first), shape: Math.exp(second) }
  return {
    form: 'hyperbolic',
    ultimate,
    rate: Math.exp(first),
    offset: form === 'hyperbolic' ? second : 0,
  }
}

function shapeOf(form: FitForm, tests: readonly AgedTest[]): Shape {
  const ages = tests.map(([age]) => age)
  const [youngest, oldest] = [Math.min(...ages), Math.max(...ages)]
  const times = [0.05, 0.2, 0.5, 1].map((share) => Math.log(youngest + share * (oldest - youngest)))
  const [slowest, fastest] = [-Math.log(1e4 * oldest), -Math.log(1e-4 * youngest)]
  if (form === 'exponential') {
    return {
      at: (age, [tau = 0, a = 0]) => Math.exp(-((Math.exp(tau) / age) ** Math.exp(a))),
      starts: times.flatMap((time) => [Math.log(0.5), 0].map((a) => [time, a])),
      lowest: [-fastest, Math.log(0.05)],
      highest: [-slowest, Math.log(5)],
    }
  }
  const hyperbola = (age: number, rate: number, offset: number) => {
    const x = rate * Math.max(age - offset, 0)
    return x / (1 + x)
  }
  if (form === 'hyperbolic from 0') {
    return {
      at: (age, [k = 0]) => hyperbola(age, Math.exp(k), 0),
      starts: times.map((time) => [-time]),
      lowest: [slowest],
      highest: [fastest],
    }
  }
  return {
    at: (age, [k = 0, offset = 0]) => hyperbola(age, Math.exp(k), offset),
    starts: times.flatMap((time) => [0, 0.5].map((share) => [-time, share * youngest])),
    lowest: [slowest, 0],
    highest: [fastest, youngest],
  }
}

/** Ultimate strength of least squares for given bending parameters. */
function factor(tests: readonly AgedTest[], shape: Shape, p: readonly number[]): number {
  let [top, bottom] = [0, 0]
  for (const [age, strength] of tests) {
    const g = shape.at(age, p)
    top += g * strength
    bottom += g * g
  }
  return bottom > 0 ? top / bottom : Number.NaN
}

function squares(tests: readonly AgedTest[], shape: Shape, p: readonly number[]): number {
  const ultimate = factor(tests, shape, p)
  if (Number.isNaN(ultimate)) return Number.POSITIVE_INFINITY
  return tests.reduce((sum, [age, strength]) => sum + (strength - ultimate * shape.at(age, p)) ** 2, 0)
}

/** Steps along each direction while that helps, along the last success too; halves the step where nothing helps. */
function patternSearch(
  cost: (p: readonly number[]) => number,
  start: readonly number[],
  lowest: readonly number[],
  highest: readonly number[],
): readonly number[] {
  const spans = start.map((_, axis) => ((highest[axis] ?? 0) - (lowest[axis] ?? 0)) / 8)
  const within = (p: readonly number[]) =>
    p.map((value, axis) => Math.min(highest[axis] ?? value, Math.max(lowest[axis] ?? value, value)))
  let here = within(start)
  let least = cost(here)
  for (let step = 1, tries = 0; step > 1e-12 && tries < 4000; tries += 1) {
    let moved = here
    let reached = least
    for (const [axis, span] of spans.entries()) {
      for (const sign of [1, -1]) {
        const trial = within(moved.map((value, i) => (i === axis ? value + sign * step * span : value)))
        const price = cost(trial)
        if (price < reached) [moved, reached] = [trial, price]
      }
    }
    if (reached < least) {
      const leap = within(moved.map((value, axis) => 2 * value - (here[axis] ?? value)))
      const price = cost(leap)
      ;[here, least] = price < reached ? [leap, price] : [moved, reached]
    } else step /= 2
  }
  return here
}

/** gᵀ (JᵀJ)⁻¹ g at an age, J the slopes of the curve by its parameters at the tests. Infinity where JᵀJ is singular. */
function leverageOf(
  tests: readonly AgedTest[],
  shape: Shape,
  ultimate: number,
  p: readonly number[],
): (age: number) => number {
  const slopes = (age: number) => [
    shape.at(age, p),
    ...p.map((value, axis) => {
      const small = 1e-5 * Math.max(1, Math.abs(value))
      const moved = (by: number) => p.map((q, i) => (i === axis ? q + by : q))
      return (ultimate * (shape.at(age, moved(small)) - shape.at(age, moved(-small)))) / (2 * small)
    }),
  ]
  const size = p.length + 1
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  for (const [age] of tests) {
    const g = slopes(age)
    for (const [i, row] of normal.entries())
      for (const j of row.keys()) row[j] = (row[j] ?? 0) + (g[i] ?? 0) * (g[j] ?? 0)
  }
  return (age) => {
    const g = slopes(age)
    const x = solve(normal, g)
    if (x === null) return Number.POSITIVE_INFINITY
    return Math.max(
      0,
      x.reduce((sum, value, i) => sum + value * (g[i] ?? 0), 0),
    )
  }
}

/** Gauss elimination with pivoting; null where the matrix is singular to working precision. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0])
  const largest = Math.max(...matrix.flat().map(Math.abs))
  for (let column = 0; column < rows.length; column += 1) {
    const pivot = rows
      .slice(column)
      .reduce((a, b) => (Math.abs(b[column] ?? 0) > Math.abs(a[column] ?? 0) ? b : a))
    if (!(Math.abs(pivot[column] ?? 0) > 1e-13 * largest)) return null
    rows.splice(rows.indexOf(pivot), 1)
    rows.splice(column, 0, pivot)
    for (const row of rows) {
      if (row === pivot) continue
      const share = (row[column] ?? 0) / (pivot[column] ?? 1)
      for (let i = column; i < row.length; i += 1) row[i] = (row[i] ?? 0) - share * (pivot[i] ?? 0)
    }
  }
  return rows.map((row, i) => (row[rows.length] ?? 0) / (row[i] ?? 1))
}
