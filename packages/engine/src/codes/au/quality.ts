import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'

export const quality: QualityRules = {
  tolerance: ({ what }) => unknown(`${what}: no confirmed value in au`),
  acceptance: () => unknown('acceptance: the rules of AS 1379 are not confirmed'),
  meanWanted: () => unknown('mean wanted of a mix: the rules of AS 1379 are not confirmed'),
  testAge: () => unknown('tolerance on the test age: no confirmed value in au'),
  sampling: () => unknown('samples wanted: the frequency of AS 1379 is not confirmed'),
  samplingWords: null,
}
