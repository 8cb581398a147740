export { severalCranes } from '../../codes/au/qld-mobile-crane-code/several-cranes.ts'
export { modeFactor } from '../../codes/eu/en818-4-1996/mode-factor.ts'
export { beamMoment, spreaderCompression } from './beam.ts'
export { craneLoad } from './crane-load.ts'
export { pickCompliance } from './pick-compliance.ts'
export { ROW_OFF, rigged } from './rigged.ts'
export type { LegPick, Rigged, RiggedBeam, RiggedInput, RiggedPick } from './rigging-types.ts'
export {
  type Turning,
  type TurningForce,
  type TurningPlace,
  turning,
  turningForce,
  twoHooks,
} from './turning.ts'
