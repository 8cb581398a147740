export { AGE_WARNING, type AgeState, type LoadAge, type LoadAgeInput, loadAge } from './age.ts'
export { type AirInput, type AirThen, airAt } from './air.ts'
export { ASKED_BY_DOCKETS, askedByDockets } from './docket-answers.ts'
export type { OrderedSlump } from './limits.ts'
export {
  counts,
  type DocketField,
  type DocketWords,
  inOrder,
  type Load,
  type LoadDecision,
  volumeHere,
  wordsOf,
} from './load.ts'
export { type LoadRow, loadRowTitle } from './load-row.ts'
export { type LoadsInput, loadRows } from './load-rows.ts'
export { type NextLoad, nextLoad } from './next-load.ts'
export type { PourOrder } from './one-load.ts'
