import { type Grid, gridOf } from './grid.ts'
import { degreeAt } from './hydration.ts'
import { Journey } from './journey.ts'
import { HeatMarch } from './march.ts'
import {
  type EnergyBalance,
  type Fineness,
  type HeatProblem,
  type HeatRun,
  USUAL_FINENESS,
} from './problem.ts'

/** The balance closes to rounding and to what Newton leaves; more is a defect. */
const MOST_SHARE = 1e-6

/**
 * Heat through a panel that hydrates: temperatures, equivalent age and degree of hydration in time.
 *
 * One-dimensional: edges, openings and steel are left out, and so are freezing water and the change of conductivity with hydration.
 * Finite volumes, TR-BDF2, every break of a series met exactly. Example: 400 kg/m³ of 450 J/g without loss, αu 0.70, τ 14 h, β 0.90,
 * 40 000 J/mol at 23 °C, 2400 kJ/m³K from 20 °C: 61.93 °C at 24 h.
 *
 * @throws Error where the energy balance does not close: a defect of the solver.
 */
export function runHeat(problem: HeatProblem, fineness: Fineness = USUAL_FINENESS): HeatRun {
  const grid = gridOf({
    concrete: problem.concrete,
    cells: fineness.cells,
    under: problem.under,
    over: problem.over,
  })
  const initial = initialCells(problem, grid)
  const march = new HeatMarch(grid, problem.hydration, initial, fineness.tolerance)
  const journey = new Journey(problem, grid, march)
  journey.go()
  const energy = balance(problem, grid, march, initial)
  refuseOpen(energy)
  return { ...journey.found(), energy }
}

/** @throws Error where heat is left over: a defect of the solver. */
export function refuseOpen({ residual, share }: EnergyBalance): void {
  if (!(share <= MOST_SHARE))
    throw new Error(`energy balance: ${residual} kJ/m² left over, share ${share} above ${MOST_SHARE}`)
}

function initialCells({ under, over, initial }: HeatProblem, grid: Grid): Float64Array {
  const celsius = new Float64Array(grid.cells).fill(initial)
  let at = 0
  for (const [index, count] of grid.counts.entries()) {
    const outward = index < under.length ? under[under.length - 1 - index] : over[index - under.length - 1]
    if (index !== under.length && outward !== undefined) celsius.fill(outward.initial, at, at + count)
    at += count
  }
  return celsius
}

function balance(
  { hydration }: HeatProblem,
  grid: Grid,
  { now, inBelow, inAbove }: HeatMarch,
  initial: Float64Array,
): EnergyBalance {
  let stored = 0
  let given = 0
  for (let i = 0; i < grid.cells; i += 1) stored += grid.capacity[i]! * (now.celsius[i]! - initial[i]!)
  for (let i = grid.from; i < grid.to; i += 1)
    given += hydration.binder * hydration.heat * grid.width[i]! * degreeAt(hydration, now.age[i]!)
  const residual = stored - given - inBelow - inAbove
  // Of a run in which nothing moves the balance is one of rounding only: a kelvin of the whole is the least it is held against.
  const whole = grid.capacity.reduce((sum, capacity) => sum + capacity, 0)
  const largest = Math.max(Math.abs(stored), given, Math.abs(inBelow), Math.abs(inAbove), whole)
  return { stored, hydration: given, inBelow, inAbove, residual, share: Math.abs(residual) / largest }
}
