import { commonPractice } from '../../working/source.ts'
import type { CureRules } from '../cure-rules.ts'
import { curingTime } from './en13670-2009/curing-time.ts'

export const cure: CureRules = {
  peakTemperature: null,
  leastTemperature: {
    value: 5,
    source: {
      standard: 'EN 13670:2009',
      clause: 'Annex F: hours below it do not count',
      status: 'from memory',
    },
  },
  coreFace: null,
  uncovering: { value: 20, source: commonPractice('thermal shock of a visible face') },
  standardCuring: {
    value: 20,
    source: {
      standard: 'EN 12390-2',
      clause: 'curing in water or at 95 % humidity, 20 ± 2 °C',
      status: 'seen',
    },
  },
  curingTime,
}
