import { commonPractice } from '../../working/source.ts'
import { unknown } from '../../working/worked.ts'
import type { CureRules } from '../cure-rules.ts'

export const cure: CureRules = {
  peakTemperature: {
    value: 70,
    source: {
      standard: 'ACI 301, edition not noted',
      clause: 'maximum temperature of concrete',
      status: 'seen',
    },
  },
  leastTemperature: {
    value: 10,
    source: { standard: 'ACI 318-19', clause: '26.5.3', status: 'from memory' },
  },
  coreFace: {
    value: 19,
    source: {
      standard: 'ACI 301, edition not noted',
      clause: 'mass concrete: centre and surface of a placement',
      status: 'seen',
    },
  },
  uncovering: { value: 20, source: commonPractice('thermal shock of a visible face') },
  standardCuring: {
    value: 23,
    source: {
      standard: 'ASTM C31',
      clause: 'final curing of standard-cured specimens, 23 ± 2 °C',
      status: 'seen',
    },
  },
  curingTime: () => unknown('curing time: no rule by class in this family'),
}
