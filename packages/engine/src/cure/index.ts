export { type AgeMethod, ageRate, GAS_CONSTANT } from './age-method.ts'
export { cureAsked, LEAST_TEMPERATURE_LIMIT, PEAK_LIMIT } from './cure-asked.ts'
export type { CurePlan, CurvePoint } from './cure-plan.ts'
export { equivalentAge } from './equivalent-age.ts'
export { type AgedTest, type CurveFit, fitCurve } from './fit-curve.ts'
export { chanceMet, hourAtChance } from './gain/chance-met.ts'
export { HELD_OUT_FOUND } from './gain/held-out-found.ts'
export type { MixProportions } from './gain/open-mixes.ts'
export { type PourModel, pourModel } from './gain/pour-model.ts'
export { type StrengthPriorInput, strengthPrior } from './gain/prior.ts'
export type { StrengthPrior } from './gain/strength-prior.ts'
export { type HourMetInput, hourMet } from './hour-met.ts'
export { type Cylinder, type LiveCurve, type LiveCurveInput, liveCurve } from './live-curve.ts'
export { maturity } from './maturity.ts'
export { type Cover, coverOfPours, LEAST_COVER, ownCover, type PastPour } from './own-cover.ts'
export { type PlanCureInput, planCure } from './plan-cure.ts'
export { COLDEST_READING, HOTTEST_READING, type Reading, readingsUntil } from './readings.ts'
export { ageAtStrength, strengthOf } from './strength-curve.ts'
export {
  ASSUMED_ACTIVATION,
  ASSUMED_DATUM,
  ASSUMED_REFERENCE,
  type LogStrength,
  type LogStrengthInput,
  mixMethod,
  type StrengthNowInput,
  strengthFromLog,
  strengthNow,
} from './strength-from-log.ts'
export {
  BAND_DEVIATE,
  type StrengthBand,
  type StrengthModel,
  type StrengthSource,
  strengthModel,
} from './strength-model.ts'
export { readTemperatureLog } from './temperature-log.ts'
