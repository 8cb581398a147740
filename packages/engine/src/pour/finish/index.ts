export { type AdviceInput, type DryingAdvice, dryingAdvice } from './advice.ts'
export { type AirThen, airGaps, airThen, readAt, type SurfaceAir } from './air.ts'
export {
  BLEED_MODEL,
  BLEED_SHARE,
  BLEED_TIME,
  type BleedKind,
  bleedTotal,
  DRYING_LINE,
} from './bleed.ts'
export { type SeenShare, type SetShare, type SetShareInput, setShare } from './set-share.ts'
export { FLOAT_OPENS, FLOAT_OPENS_LATEST, SIGNS, shareOfPrint, shareOfResistance } from './signs.ts'
export {
  SURFACE_FILM,
  SURFACE_HEAT,
  type SurfaceReading,
  type SurfaceTemperatureInput,
  surfaceTemperature,
  timeToAir,
} from './surface-temperature.ts'
export {
  ROUGHNESS,
  SHED_WIND,
  STATION_HEIGHT,
  SURFACE_HEIGHT,
  type SurfaceWindInput,
  surfaceWind,
  windAtSurface,
} from './surface-wind.ts'
export { ratesAt, sheenGone, surfaceWater, temperatureAt, type WaterInput, type WaterPoint } from './water.ts'
export {
  type FinishWindow,
  type FinishWindowId,
  finishWindows,
  type Sheen,
  type WindowsInput,
} from './windows.ts'
