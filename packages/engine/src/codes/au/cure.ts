import { commonPractice } from '../../working/source.ts'
import { unknown } from '../../working/worked.ts'
import type { CureRules } from '../cure-rules.ts'

export const cure: CureRules = {
  peakTemperature: null,
  leastTemperature: null,
  coreFace: null,
  uncovering: { value: 20, source: commonPractice('thermal shock of a visible face') },
  standardCuring: null,
  curingTime: () => unknown('curing time: no confirmed value'),
}
