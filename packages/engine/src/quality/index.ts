export {
  type Acceptance,
  acceptResults,
  parseResults,
  resultsSchema,
  type StrengthResults,
} from './accept-results.ts'
export { type AsBuilt, type AsBuiltInput, asBuilt } from './as-built.ts'
export type { Deviation } from './deviation.ts'
export { toleranceKey } from './family-limit.ts'
export type { Point3 } from './frame.ts'
export { type Measured, measuredSchema, parseMeasured } from './measured.ts'
export { type MixMeanInput, mixMean } from './mix-mean.ts'
export { bowOf, cornerHeights, twistOf, warpOf } from './out-of-plane.ts'
export { type PlanQualityInput, planQuality } from './plan-quality.ts'
export type { PanelTolerance, QualityPlan } from './quality-plan.ts'
