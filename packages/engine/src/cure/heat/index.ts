export type { Face } from './face.ts'
export { type HeatCase, parseHeatCase } from './heat-case.ts'
export { adiabaticRise, degreeAt, type Hydration } from './hydration.ts'
export {
  type EnergyBalance,
  type Fineness,
  type HeatProblem,
  type HeatRun,
  type OuterLayer,
  type Peak,
  USUAL_FINENESS,
} from './problem.ts'
export { runHeat } from './run.ts'
export { type Series, type SeriesPoint, steady } from './series.ts'
