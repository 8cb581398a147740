export type { Tight } from './close-steel/tight.ts'
export { type CompactInput, compact } from './compact.ts'
export { CONGESTED_SHARE, type Congested } from './compaction/parts.ts'
export { type Displaced, displacedBy } from './displaced.ts'
export {
  ASSUMED_DRYING_LIMIT,
  type Drying,
  type DryingInput,
  drying,
  menzelRate,
  saturation,
  unoRate,
} from './drying.ts'
export {
  jointMinutes,
  type LoadTime,
  type LoadTimes,
  type LoadTimesInput,
  latestBegin,
  loadTimes,
} from './load-times.ts'
export { dischargeLimit, type SlumpBand, slumpBand } from './loads/limits.ts'
export { ASSUMED_MARGIN } from './margin.ts'
export { MOST_HEADS, STAND, VIBRATORS } from './placing-choice.ts'
export { chuteOf, FINISH_CLOSES, FINISH_OPENS, POUR_RATES, type PourInput, planPour } from './plan-pour.ts'
export { tightText } from './pour-asked.ts'
export type { CompactionPlan, PlacingZone, PourPlan, ReducedZone } from './pour-plan.ts'
export { type Order, type OrderInput, orderVolume } from './quantity.ts'
export {
  ASSUMED_ACTIVATION,
  hourReached,
  type Setting,
  type SettingInput,
  setting,
  settingRate,
  type TemperatureReadings,
} from './setting.ts'
export {
  COVERING_SHARE,
  coveringRadius,
  LAYER_DEPTH,
  placingRate,
  radiusOfAction,
  SECONDS_IN,
  SECONDS_MOVING,
} from './vibrator.ts'
