export { type AnchorCase, parseAnchorCase } from './anchor/anchor-case.ts'
export type { AnchorFound, AnchorModeResult } from './anchor/anchor-modes.ts'
export { anchorReport } from './anchor/anchor-report.ts'
export { type AnchorResistanceInput, anchorResistance } from './anchor/anchor-resistance.ts'
export { type HandlingModesInput, handlingModes } from './anchor/handling-modes.ts'
export { craneRating } from './crane-rating.ts'
export { hookMass, MASS_ALLOWANCE } from './hook-mass.ts'
export {
  type ConditionHour,
  type HourState,
  type LiftHours,
  type LiftHoursInput,
  liftHours,
  type StageHour,
} from './hour.ts'
export { type DrawnKinds, drawnKinds } from './insert-kinds.ts'
export { angleCheck, designLoadChecks } from './lift-checks.ts'
export type { LiftPlan, PlannedInsert } from './lift-plan.ts'
export {
  type LiftAverage,
  type LiftBending,
  type LiftPeak,
  type LiftProbe,
  type LiftReport,
  type LiftReportInput,
  liftReport,
} from './lift-report.ts'
export { type LoadFactor, loadFactor } from './load-factor.ts'
export { mouldFace } from './mould-face.ts'
export {
  type Effort,
  type KeptClear,
  PICK_COUNTS,
  type Pick,
  type Picks,
  type PicksInput,
  type PicksPeak,
  type ProposedInserts,
  picks,
  proposedInserts,
  type Sharing,
  USUAL,
} from './picks/index.ts'
export { type PlanLiftInput, planLift } from './plan-lift.ts'
export {
  type Candidate,
  candidate,
  type DiscMoments,
  type HeldEdge,
  inConcrete,
  type LiftedPlate,
  type LiftedPlateInput,
  type LoadCase,
  liftedPlate,
  loadCase,
  type Moments,
  type PlateField,
  type PlateInput,
  type PlateModel,
  type PlatePeak,
  type PlatePoint,
  type PlateSupport,
  peakTension,
  plateOf,
  platePeak,
  principalMoments,
  reentrantCorners,
  type Supported,
  supported,
} from './plate/index.ts'
export { leastStrengthFor, type RatedInsert, ratedLoad, scaledLoad } from './rated-load.ts'
export { legPull, legTension, type Sling, slingAngle, tilt } from './sling.ts'
export { type Arrangement, arrangements } from './stages/arrangement.ts'
export { type Bench, type Bent, benchOf, bent } from './stages/bending.ts'
export { INSERT_MARGIN_LIMIT } from './stages/insert-limit.ts'
export { type LiftStagesInput, liftStages } from './stages/lift-stages.ts'
export {
  type CornerBars,
  LIFT_STAGE_IDS,
  type LiftCondition,
  type LiftStage,
  type LiftStageId,
  type PeakKind,
  type StageHung,
  type StageInsert,
  type StagePeak,
  type StageSupport,
} from './stages/stage.ts'
export {
  countedPeak,
  liftConditions,
  peakWords,
  STAGE_INSERT,
  STAGE_PEAK,
  STRIP_STAGES,
  stageChecks,
} from './stages/stage-checks.ts'
export { factorLimit, stageFactor } from './stages/stage-factor.ts'
export { TENSION_LIMIT, tensionLimit } from './stages/tension-limit.ts'
export {
  type StressBand,
  type StressField,
  type StressFieldInput,
  stressField,
  stressLevels,
} from './stress-field.ts'
export type { TensionFace } from './stress-points.ts'
export { inOneLine, pickCentre, type Support, supportLoads } from './supports.ts'
export {
  LEAST_STRENGTH_LIMIT,
  type WantedStrength,
  type WantedStrengthInput,
  wantedStrength,
} from './wanted-strength.ts'
