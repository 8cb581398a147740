export { type ClearPlaceInput, clearPlace, LEAST_EDGE } from './clear-place.ts'
export {
  type TrialAsk,
  TrialBench,
  type TrialBenchInput,
  type TrialView,
  turnedShare,
} from './trial-bench.ts'
