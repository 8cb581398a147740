export { type DueState, type DueTest, type DueTestsInput, dueTests } from './due-tests.ts'
export { type SamplesWanted, type SamplesWantedInput, samplesWanted } from './samples-wanted.ts'
export { type StrengthTested, strengthTests } from './strength-tests.ts'
export { LEAST_RANGES, meanOfTest, rangeOf, type WithinTest, withinTest } from './within-test.ts'
