import type { Source } from '../../working/source.ts'
import { unknown } from '../../working/worked.ts'
import type { CureRules } from '../cure-rules.ts'

const COLD: Source = {
  standard: 'advice to NZS 3109:1997',
  clause: '7.2.1, cold weather',
  status: 'seen',
}

export const cure: CureRules = {
  peakTemperature: null,
  leastTemperature: { value: 10, source: COLD },
  coreFace: null,
  uncovering: { value: 20, source: COLD },
  standardCuring: null,
  curingTime: () => unknown('curing time: no confirmed value'),
}
