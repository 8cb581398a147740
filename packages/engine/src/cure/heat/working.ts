import type { Source } from '../../working/source.ts'
import type { Step } from '../../working/worked.ts'
import type { Face } from './face.ts'
import { HYDRATION_SOURCE } from './hydration.ts'
import type { HeatProblem, HeatRun } from './problem.ts'
import { valueAt } from './series.ts'

const HEAT: Source = {
  standard: 'heat through the thickness',
  clause: 'docs/methods/cure.md',
  status: 'computed',
}

/** What stands behind the curves of a run: the numbers that a reader can check by hand, the peaks, and the balance. */
export function heatSteps(problem: HeatProblem, run: HeatRun): Step[] {
  const { concrete, hydration } = problem
  const diffusivity = concrete.conductivity / (concrete.heatCapacity * 1000)
  const rise = (hydration.binder * hydration.heat * hydration.ultimate) / concrete.heatCapacity
  const { stored, takenOff, hydration: given, inBelow, inAbove, residual } = run.energy
  const search = { unit: '°C', source: HEAT, by: 'search' as const }
  const steps = { steps: run.steps, 'steps tried again': run.rejected }
  return [
    {
      symbol: 'a',
      formula: 'k / (1000 ρc)',
      given: { k: concrete.conductivity, ρc: concrete.heatCapacity },
      result: diffusivity,
      unit: 'm²/s',
      source: HEAT,
    },
    {
      symbol: 'ΔTad',
      formula: 'B Hu αu / ρc',
      given: { B: hydration.binder, Hu: hydration.heat, αu: hydration.ultimate, ρc: concrete.heatCapacity },
      result: rise,
      unit: 'K',
      source: HYDRATION_SOURCE,
      note: 'rise in the end of concrete that loses nothing',
    },
    ...faceSteps('top', problem.above),
    ...faceSteps('bottom', problem.below),
    {
      ...search,
      symbol: 'Tmax',
      formula: 'finite volumes through the thickness, TR-BDF2 in time, each break of a series met',
      given: steps,
      result: run.peak.celsius,
      note: `hottest of the whole run, at ${shortHour(run.peak.hour)}`,
    },
    {
      ...search,
      symbol: 'Tcore',
      formula: 'the same, at mid-depth',
      given: steps,
      result: run.corePeak.celsius,
      note: `highest of the whole run, at ${shortHour(run.corePeak.hour)}`,
    },
    ...differenceSteps(run),
    {
      symbol: 'E',
      formula: 'S + L − H − Qb − Qt',
      given: { S: stored, L: takenOff, H: given, Qb: inBelow, Qt: inAbove },
      result: residual,
      unit: 'kJ/m²',
      source: HEAT,
      note: 'heat stored and gone with layers, less hydration, less what came in from below and from the top: nothing may be left over',
    },
  ]
}

function differenceSteps({ difference }: HeatRun): Step[] {
  if (difference === null) return []
  const { core, face, kelvin, side, hour } = difference
  return [
    {
      symbol: 'ΔT',
      formula: 'Tc − Tf',
      given: { Tc: core, Tf: face },
      result: kelvin,
      unit: 'K',
      source: HEAT,
      note: `largest difference of core and face after the first hour, ${side}, at ${shortHour(hour)}`,
    },
  ]
}

function faceSteps(name: string, { film, resistance }: Face): Step[] {
  const h = film === null ? 0 : valueAt(film, 0)
  if (!(h > 0)) return []
  const R = valueAt(resistance, 0)
  const U = 1 / (1 / h + R)
  return [
    {
      symbol: `U ${name}`,
      formula: '1 / (1 / h + R)',
      given: { h, R },
      result: U,
      unit: 'W/m²K',
      source: HEAT,
      note: 'at 0 h, layers that store heat left out',
    },
  ]
}

function shortHour(hour: number): string {
  return `${Math.round(hour * 100) / 100} h`
}
