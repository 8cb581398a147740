export {
  chance,
  type HeldOutCase,
  heldOutCases,
  type Learnt,
  restOfFolds,
  type Score,
  scoreOf,
  type Told,
  toldWithMix,
  toldWithoutMix,
} from './hold-out.ts'
export { codeCurve, logLinear, median } from './plain-curves.ts'
