export { type BondInput, bondCondition } from '../codes/eu/en1992-1-1-2004/lap.ts'
export { type BarMassInput, barMass } from './bar-mass.ts'
export { type PathInput, type PathShape, pathShape } from './bar-path.ts'
export { type BendInput, type BendVerdict, checkBend } from './bend.ts'
export {
  type EndLegInput,
  type LegLimit,
  type LegLimitsInput,
  leastEndLeg,
  legLimits,
  type MadeLeg,
  type MadeLegInput,
  madeLeg,
} from './bend-legs.ts'
export {
  bentOutline,
  type EnclosingBox,
  enclosingBox,
  type OutlineInput,
  TRANSPORT_BOX,
} from './bend-outline.ts'
export { type CageMass, cageMass } from './cage/cage-mass.ts'
export type { CagePlan } from './cage/cage-plan.ts'
export type { Craning, Picks } from './cage/craning.ts'
export { type CageInput, planCage } from './cage/plan-cage.ts'
export type { ChairLayer, ChairPlan } from './chairs/chair-plan.ts'
export { type ChairsInput, planChairs } from './chairs/plan-chairs.ts'
export {
  bendDeduction,
  type CutLength,
  type CutLengthInput,
  cutLength,
  type ShortLeg,
  shortLegs,
} from './cut-length.ts'
export {
  type JobLists,
  type JobListsInput,
  jobCutLists,
  type NotCut,
  type PanelBars,
  type RackOffcut,
  type SteelCutList,
} from './cutting/job-lists.ts'
export { type CutList, parseCutList } from './cutting/list.ts'
export {
  type CutBar,
  type CutBatch,
  type CutPieces,
  type CutPlan,
  type CutPlanInput,
  type CutProgress,
  cutPlan,
} from './cutting/plan.ts'
export { type CutRest, type CutSoFar, type RestInput, restOfCut } from './cutting/rest.ts'
export { bendGauge, type Gauge, type GaugeDisc, type GaugeUse } from './gauge.ts'
export { type LapPlacesInput, lapPlaces, type Stretch } from './laid-out/lap-places.ts'
export type { LappedLine, Piece } from './lapped-line.ts'
export { type BarLine, type MatInput, type MatLines, matLines } from './mat-lines.ts'
export {
  arcDiameter,
  type BendReading,
  type MeasuredBend,
  type MeasuredBendInput,
  measuredBend,
} from './measured-bend.ts'
export {
  type PermittedActs,
  type PermittedInput,
  permittedActs,
  possibleProcesses,
} from './permitted/permitted-acts.ts'
export type { PermittedAct } from './permitted/strictest.ts'
export { type PlanSteelInput, planSteel, WIRE_PER_TONNE } from './plan-steel.ts'
export {
  arcShape,
  type CurvedLength,
  helixShape,
  ringShape,
} from './shape-code/curved-shapes.ts'
export { minimisedLength } from './shape-code/minimised.ts'
export {
  type ShapeInput,
  type ShapeLabels,
  scheduledLength,
  shapeLabels,
} from './shape-code/shape-code.ts'
export type {
  BarUse,
  BesidePair,
  Corner,
  PlacedBar,
  PlacedLap,
  ScheduledBar,
  SteelPlan,
} from './steel-plan.ts'
export { type LayerRows, layerRows, type MatRowLine } from './tie-plan/mat-rows.ts'
export { type LayerTies, TIE, type TiedCrossings, type TiePlan, tiePlan } from './tie-plan/tie-plan.ts'
export { type Crossings, crossings } from './ties.ts'
