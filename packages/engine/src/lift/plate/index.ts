export type { PlateField, PlatePoint, StripInput } from './field.ts'
export type { HeldEdge } from './held-edges.ts'
export {
  inConcrete,
  type LiftedPlate,
  type LiftedPlateInput,
  liftedPlate,
  type PlateInput,
  plateOf,
} from './lifted-plate.ts'
export { type Fine, LEAST_ANGLE, type PlateMesh, type PlateMeshInput, plateMesh } from './mesh.ts'
export {
  type PlateModel,
  type PlateModelInput,
  plateModel,
  RESIDUAL_LIMIT,
  rigidity,
  solvePlate,
} from './model.ts'
export { type Moments, peakTension, principalMoments } from './moments.ts'
export { type DiscMoments, discMoments, type PlatePeak, platePeak, reentrantCorners } from './peak.ts'
export {
  type Candidate,
  candidate,
  type LoadCase,
  loadCase,
  type PlateSupport,
  SAME_POINT,
  type Supported,
  type SupportedInput,
  supported,
} from './supports.ts'
