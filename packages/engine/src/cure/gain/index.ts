export { readAge } from './covariance.ts'
export type { Covariance } from './learned.ts'
export {
  type AgedStrength,
  alikeGroups,
  type MixProportions,
  OPEN_TESTS,
  type OpenMix,
  openMixes,
} from './open-mixes.ts'
export { type OpenProcess, openProcess, type Slip } from './open-process.ts'
export { factorOf, inverseOf } from './factor.ts'
