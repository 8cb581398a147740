export { type BinderInput, binderHydration } from './binder.ts'
export type { Face } from './face.ts'
export { CORE_FACE_LIMIT, type NightFindings, type NightFindingsInput, nightFindings } from './findings.ts'
export { type HeatCase, parseHeatCase } from './heat-case.ts'
export { adiabaticRise, degreeAt, type Hydration } from './hydration.ts'
export { concreteOfMix, type Night, type NightInput, nightOf } from './night.ts'
export { filmOfWind, radiativeFilm, skyOfAir } from './outside.ts'
export {
  type CoreFace,
  type EnergyBalance,
  type Fineness,
  fineFineness,
  type HeatProblem,
  type HeatRun,
  type OuterLayer,
  type Peak,
  usualFineness,
} from './problem.ts'
export { runHeat } from './run.ts'
export { type Series, type SeriesPoint, steady } from './series.ts'
export {
  LONGEST_STRETCH,
  readWeather,
  type Weather,
  type WeatherGap,
  type WeatherRow,
  weatherGaps,
  weatherOf,
} from './weather.ts'
export { type WeatheredCase, weatheredCase } from './weather-case.ts'
export { heatSteps } from './working.ts'
export { type PourWeather, type PourWeatherInput, weatherOfPour, type YardWeather } from './yard-weather.ts'
