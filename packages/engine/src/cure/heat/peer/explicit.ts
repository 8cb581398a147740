import { GAS_CONSTANT, ICE_POINT } from '../../age-method.ts'
import { FaceLines } from '../face.ts'
import { PER_HOUR } from '../grid.ts'
import type { HeatProblem } from '../problem.ts'
import { breaksOf } from '../series.ts'
import { nodesOf, seriesOfBoth } from './lines.ts'

/** Share of the longest stable step. */
const STABLE = 0.95

export interface ExplicitRun {
  readonly core: readonly number[]
  readonly top: readonly number[]
  readonly bottom: readonly number[]
  readonly steps: number
}

/**
 * A plain explicit scheme (forward differences in time, even grid) at its longest stable step: what the bench holds the solver's
 * speed against. Every break and every hour that is written down is met.
 */
export function explicitDifferences(problem: HeatProblem, spaces: number): ExplicitRun {
  const { size, first, last, capacity, link, gives, initial } = nodesOf(problem, spaces)
  const { ultimate, tau, beta, activation, reference } = problem.hydration
  const warmth = activation / GAS_CONSTANT
  const atReference = 1 / (reference + ICE_POINT)
  const T = Float64Array.from(initial)
  const age = new Float64Array(size)
  const change = new Float64Array(size)
  const count = Math.floor(problem.hours / problem.every + 1e-9) + 1
  const times = Array.from({ length: count }, (_, index) => index * problem.every)
  const run = { core: [problem.initial], top: [problem.initial], bottom: [problem.initial], steps: 0 }
  const stops = [...new Set([...seriesOfBoth(problem).flatMap(breaksOf), ...times, problem.hours])]
    .filter((hour) => hour > 0 && hour <= problem.hours)
    .sort((a, b) => a - b)
  // Nodes stand on the surfaces: nothing lies between them and the outer side.
  const below = new FaceLines(problem.below, Number.POSITIVE_INFINITY)
  const above = new FaceLines(problem.above, Number.POSITIVE_INFINITY)
  let t = 0
  for (const stop of stops) {
    below.between(t, stop)
    above.between(t, stop)
    const pulls = [t, stop].map((hour) => {
      below.at(hour)
      above.at(hour)
      return [below.pull / PER_HOUR, above.pull / PER_HOUR] as const
    })
    let longest = Number.POSITIVE_INFINITY
    for (let i = 0; i < size; i += 1) {
      const out = i === 0 ? Math.max(...pulls.map(([low]) => low)) : link[i - 1]!
      const on = i === size - 1 ? Math.max(...pulls.map(([, high]) => high)) : link[i]!
      longest = Math.min(longest, (STABLE * capacity[i]!) / (out + on))
    }
    const steps = Math.max(Math.ceil(((stop - t) * 3600) / longest), 1)
    const h = ((stop - t) * 3600) / steps
    for (let step = 0; step < steps; step += 1) {
      below.at(t + (step * h) / 3600)
      above.at(t + (step * h) / 3600)
      let comes = (below.drive - below.pull * T[0]!) / PER_HOUR
      for (let i = 0; i < size; i += 1) {
        const goes =
          i < size - 1 ? link[i]! * (T[i]! - T[i + 1]!) : (above.pull * T[i]! - above.drive) / PER_HOUR
        let heat = comes - goes
        if (gives[i]! > 0) {
          const rate = Math.exp(warmth * (atReference - 1 / (T[i]! + ICE_POINT)))
          const te = age[i]!
          if (te > 0) {
            const power = (tau / te) ** beta
            heat += (gives[i]! * ultimate * Math.exp(-power) * beta * power * rate) / te / 3600
          }
          age[i] = te + (h * rate) / 3600
        }
        change[i] = (h * heat) / capacity[i]!
        comes = goes
      }
      for (let i = 0; i < size; i += 1) T[i]! += change[i]!
    }
    run.steps += steps
    t = stop
    if (times.some((time) => Math.abs(time - stop) < 1e-9)) {
      run.core.push(T[(first + last) / 2]!)
      run.top.push(T[last]!)
      run.bottom.push(T[first]!)
    }
  }
  return run
}
