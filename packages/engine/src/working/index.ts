export { type Asked, judge, limitOf, wantedOf } from './asked.ts'
export { type Check, type Compared, compare, verdictOf } from './check.ts'
export { belowZero, notAboveZero, notFinite } from './guard.ts'
export { foundText, InputError, type InputIssue, issueSentence } from './issue.ts'
export { inputIssues, parseInput, parseJson, pathText, readJson } from './parse.ts'
export { replay } from './replay.ts'
export { ceilTo, floorTo } from './round.ts'
export { shown } from './shown.ts'
export {
  COMMON_PRACTICE,
  commonPractice,
  enteredBy,
  GEOMETRY,
  type Source,
  type SourceStatus,
  STATICS,
} from './source.ts'
export { joinVerdicts, type Verdict } from './verdict.ts'
export { type Assumed, type Known, known, type Step, type Unknown, unknown, type Worked } from './worked.ts'
