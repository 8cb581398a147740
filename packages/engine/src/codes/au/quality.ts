import { unknown } from '../../working/worked.ts'
import type { QualityRules } from '../quality-rules.ts'

export const quality: QualityRules = {
  tolerance: ({ what }) => unknown(`${what}: no confirmed value in au`),
  acceptance: () => unknown('acceptance: the rules of AS 1379 are not confirmed'),
  meanWanted: () => unknown('mean wanted of a mix: the rules of AS 1379 are not confirmed'),
}
