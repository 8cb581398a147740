export type { Card, CardRow, Carried, RowDifference } from './card.ts'
export { type CardInput, cardOf } from './card-of.ts'
export { carriedFrom } from './carried.ts'
export { type CureNow, type CureNowInput, cureNow } from './cure-now.ts'
export { concreteLogs } from './curve-low.ts'
export { DECIDERS } from './decision.ts'
export { mayDiffer } from './difference.ts'
export { emptyPanelFacts, emptyStepFacts } from './empty-facts.ts'
export type {
  Defect,
  EnteredLimit,
  PanelFacts,
  PlannedTest,
  Recorded,
  Signed,
  SignedDifference,
  Signer,
  SpecimenResult,
  SpecimenSet,
  StepFacts,
  TemperatureLog,
  YardFacts,
} from './facts.ts'
export { faultsOfLog } from './faults-of-log.ts'
export {
  type BandedWindow,
  type DryingNow,
  type FinishNow,
  type FinishNowInput,
  finishNow,
} from './finish-now.ts'
export {
  type SeenSign,
  SURFACE_IDS,
  type SurfaceKind,
  surfaceSeen,
} from './finish-readings.ts'
export { holdBefore, holdIsOpen, shutHold, stepIsDone } from './hold.ts'
export { dayIn, inDate } from './in-date.ts'
export { LEFT_VALUES } from './left-row.ts'
export {
  type ConditionNow,
  type LiftHoursNow,
  type LiftHoursNowInput,
  liftHoursNow,
} from './lift-hours-now.ts'
export { airOfPour, type PourFacts, pourOrder } from './load-card-rows.ts'
export { type MouldRowsInput, mouldNow } from './mould-row.ts'
export { planInputOf } from './plan-input.ts'
export {
  asCylinder,
  CUBE_RATIO_LIMIT,
  type PourResults,
  type PourResultsInput,
  pourResults,
} from './pour-results.ts'
export { type PourStrengthInput, pourStrength } from './pour-strength.ts'
export { isStepId, type PanelStep, panelStep, STEP_IDS, STEPS, type StepId } from './steps.ts'
export { LOW_EDGE, type StrengthAtLift, strengthAtLift } from './strength-at-lift.ts'
export { type StripHour, stripHour } from './strip-hour.ts'
