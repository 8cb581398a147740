export { type CusumChart, type CusumInput, cusumChart, MEAN_WATCH } from './cusum.ts'
export { type EarlyPair, type EarlyRelation, earlyRelation, LEAST_PAIRS } from './early-relation.ts'
export {
  type ChartSignal,
  type IndividualsChart,
  individualsChart,
  LEAST_VALUES,
  RUN_RULES,
  type RunRule,
} from './individuals.ts'
