export { type AlongNight, type AlongNightInput, alongNight } from './along-night.ts'
export { changedNight, type NightChange } from './changed-night.ts'
export { comparedLog, type LogCompared, type NightPlace, placeOf } from './compare-log.ts'
export {
  type CoverTime,
  type CoverTimes,
  type CoverTimesInput,
  coverResistance,
  coverTimes,
} from './cover-times.ts'
export { type NightCase, type NightCaseInput, nightCase } from './night-case.ts'
export { FORECAST_SPREAD, type NightCurves, type NightNow, nightNow, runNight } from './night-now.ts'
export { placedTemperature } from './placed-temperature.ts'
export { SHELTERED_FILM, type UnderBedInput, underBed } from './under-bed.ts'
