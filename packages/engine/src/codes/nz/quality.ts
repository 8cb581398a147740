import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'

export const quality: QualityRules = {
  tolerance: ({ what }) => unknown(`${what}: no confirmed value in nz`),
  acceptance: () => unknown('acceptance: the rules of NZS 3104 are not confirmed'),
  meanWanted: () => unknown('mean wanted of a mix: the rules of NZS 3104 are not confirmed'),
  testAge: () => unknown('tolerance on the test age: no confirmed value in nz'),
  sampling: () => unknown('samples wanted: the frequency of NZS 3104 is not confirmed'),
  samplingWords: null,
}
