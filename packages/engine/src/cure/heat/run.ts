import { degreeAt } from './hydration.ts'
import { Journey } from './journey.ts'
import {
  type EnergyBalance,
  type Fineness,
  type HeatProblem,
  type HeatRun,
  usualFineness,
} from './problem.ts'
import { type Stack, stackOf } from './stack.ts'

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
export function runHeat(
  problem: HeatProblem,
  fineness: Fineness = usualFineness(problem.concrete.thickness),
): HeatRun {
  const journey = new Journey(problem, stackOf(problem, fineness))
  journey.go()
  const energy = balance(problem, journey.stack)
  refuseOpen(energy)
  return { ...journey.found(), energy }
}

/** @throws Error where heat is left over: a defect of the solver. */
export function refuseOpen({ residual, share }: EnergyBalance): void {
  if (!(share <= MOST_SHARE))
    throw new Error(`energy balance: ${residual} kJ/m² left over, share ${share} above ${MOST_SHARE}`)
}

function balance(
  { hydration }: HeatProblem,
  { grid, march: { now, inBelow, inAbove }, initial, takenOff }: Stack,
): EnergyBalance {
  let stored = 0
  let given = 0
  for (let i = 0; i < grid.cells; i += 1) stored += grid.capacity[i]! * (now.celsius[i]! - initial[i]!)
  for (let i = grid.from; i < grid.to; i += 1)
    given += hydration.binder * hydration.heat * grid.width[i]! * degreeAt(hydration, now.age[i]!)
  const residual = stored + takenOff - given - inBelow - inAbove
  // Of a run in which nothing moves the balance is one of rounding only: a kelvin of the whole is the least it is held against.
  const whole = grid.capacity.reduce((sum, capacity) => sum + capacity, 0)
  const largest = Math.max(
    Math.abs(stored),
    Math.abs(takenOff),
    given,
    Math.abs(inBelow),
    Math.abs(inAbove),
    whole,
  )
  return {
    stored,
    takenOff,
    hydration: given,
    inBelow,
    inAbove,
    residual,
    share: Math.abs(residual) / largest,
  }
}
