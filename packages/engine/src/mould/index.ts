export { aci347, fastPour, largestRise, slowPour, unitWeightCoefficient } from './aci347.ts'
export { bowedPlate, bowedRail } from './bowed-shape.ts'
export { ciria108, ciriaPressure } from './ciria108.ts'
export { type MouldLength, type MouldSurvey, mouldSurvey } from './corner-lengths.ts'
export { DIN_FLOWS, type DinFlow, din18218, dinPressure } from './din18218.ts'
export { type FormPlate, type FormPlateInput, formPlate } from './form-plate.ts'
export {
  type HeldDuct,
  type HeldVoid,
  heldDuct,
  heldVoid,
  LONGEST_STRAP_SPACING,
} from './held-down.ts'
export { hydrostatic } from './hydrostatic.ts'
export { type MeasuredMould, type MeasuredMouldInput, MOULD_ROWS, measuredMould } from './measured-mould.ts'
export { diagonalTolerance, lengthTolerance } from './mould-asked.ts'
export type { ChairGrid, FaceAgent, MouldPlan, MouldPlate } from './mould-plan.ts'
export type { MouldShape, ShapeCorner } from './mould-shape.ts'
export { type MouldInput, planMould } from './plan-mould.ts'
export { PRESSURE_METHODS, type PressureInput, type PressureMethod, pressure } from './pressure.ts'
export type { ElementKind, PressureFound } from './pressure-found.ts'
export { LONGEST_PROP_SPACING, type PropLine, type PropRule, type PropSide, propsAlong } from './props.ts'
export { putOnRate, releaseAgent } from './release-agent.ts'
export {
  ASSUMED_BOW_LIMIT,
  BOW_COEFFICIENT,
  BOW_LIMIT_SOURCE,
  railBow,
  type SideForm,
  type SideFormInput,
  type SpanCount,
  sideForm,
  sideThrust,
  spacingForBow,
} from './side-form.ts'
export { type LongWay, longWay, strapPlaces } from './strap-places.ts'
export {
  UPLIFT_FACTOR,
  unequalPush,
  type VoidFormer,
  type VoidFormerInput,
  voidFormer,
} from './void-former.ts'
