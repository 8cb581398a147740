import type { PourRules } from '../pour-rules.ts'
import { slumpTolerance } from './nzs3104/slump-tolerance.ts'

const NZS_3109 = { standard: 'NZS 3109:1997', clause: '7.2.1', status: 'seen' } as const

export const pour: PourRules = {
  dischargeMinutes: {
    value: 90,
    source: { standard: 'NZS 3104, edition not noted', clause: 'time of delivery', status: 'from memory' },
    note: 'from batching; less where it can no longer be placed, or in hot weather',
  },
  slumpTolerance,
  concreteLow: { value: null, source: NZS_3109, gap: 'concrete temperature: no confirmed value in NZS 3109' },
  concreteHigh: {
    value: null,
    source: NZS_3109,
    gap: 'concrete temperature: no confirmed value in NZS 3109',
  },
  airLow: {
    value: 5,
    source: NZS_3109,
    note: 'falling air; from 2 °C where it rises; below that only with precautions',
  },
  remix: {
    turns: null,
    minutes: null,
    source: { standard: 'NZS 3104, edition not noted', clause: 're-mixing', status: 'from memory' },
    gap: 're-mixing after water or admixture: no confirmed value in NZS 3104',
  },
  underDelivery: {
    share: 0.02,
    source: { standard: 'NZS 3104, edition not noted', clause: 'volume of delivery', status: 'seen' },
  },
}
