import { FaceLines } from './face.ts'
import { type Grid, gridOf } from './grid.ts'
import { HeatMarch } from './march.ts'
import { Probe } from './probe.ts'
import type { Fineness, HeatProblem, OuterLayer } from './problem.ts'

/** What lies between the two outer sides for a while, cut into cells, with the march through it. */
export interface Stack {
  readonly under: readonly OuterLayer[]
  readonly over: readonly OuterLayer[]
  readonly grid: Grid
  readonly march: HeatMarch
  readonly below: FaceLines
  readonly above: FaceLines
  readonly probe: Probe
  /** Temperature that each cell began with, °C. */
  readonly initial: Float64Array
  /** Heat above that beginning that layers took with them when they were taken off, kJ/m². */
  readonly takenOff: number
}

/** As cast, with every layer. */
export function stackOf(problem: HeatProblem, { cells, tolerance }: Fineness): Stack {
  const { concrete, under, over, hydration } = problem
  const grid = gridOf({ concrete, cells, under, over })
  const initial = new Float64Array(grid.cells).fill(problem.initial)
  const inOrder = [...[...under].reverse(), null, ...over]
  let at = 0
  for (const [index, count] of grid.counts.entries()) {
    const layer = inOrder[index]
    if (layer) initial.fill(layer.initial, at, at + count)
    at += count
  }
  const march = new HeatMarch(grid, hydration, initial, tolerance)
  return { under, over, grid, march, initial, takenOff: 0, ...sidesOf(problem, grid) }
}

/** Hours at which layers come off, within the run. */
export function strippings({ under, over, hours }: HeatProblem): number[] {
  return [...under, ...over].flatMap(({ until }) =>
    until !== null && until > 0 && until < hours ? [until] : [],
  )
}

/** Without the layers whose hour has come, and without what lies outside them; the same where none has. */
export function strippedAt(stack: Stack, problem: HeatProblem, hour: number): Stack {
  const under = staying(stack.under, hour)
  const over = staying(stack.over, hour)
  if (under.length === stack.under.length && over.length === stack.over.length) return stack
  const { grid, march, initial } = stack
  const cellsOf = (parts: readonly number[]): number => parts.reduce((sum, count) => sum + count, 0)
  const first = cellsOf(grid.counts.slice(0, stack.under.length - under.length))
  const beyond =
    grid.cells - cellsOf(grid.counts.slice(grid.counts.length - (stack.over.length - over.length)))
  let takenOff = stack.takenOff
  for (let i = 0; i < grid.cells; i += 1)
    if (i < first || i >= beyond) takenOff += grid.capacity[i]! * (march.now.celsius[i]! - initial[i]!)
  const left = gridOf({ concrete: problem.concrete, cells: grid.to - grid.from, under, over })
  return {
    under,
    over,
    grid: left,
    march: march.without(left, problem.hydration, first),
    initial: initial.slice(first, beyond),
    takenOff,
    ...sidesOf(problem, left),
  }
}

function staying(layers: readonly OuterLayer[], hour: number): readonly OuterLayer[] {
  const off = layers.findIndex(({ until }) => until !== null && until <= hour)
  return off < 0 ? layers : layers.slice(0, off)
}

function sidesOf(problem: HeatProblem, grid: Grid): Pick<Stack, 'below' | 'above' | 'probe'> {
  return {
    below: new FaceLines(problem.below, grid.half[0]!),
    above: new FaceLines(problem.above, grid.half[grid.cells - 1]!),
    probe: new Probe(grid),
  }
}
