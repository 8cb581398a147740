import type { PourRules } from '../pour-rules.ts'
import { slumpTolerance } from './as1379-2007/slump-tolerance.ts'

const AS_1379 = { standard: 'AS 1379:2007', clause: '', status: 'from memory' } as const

export const pour: PourRules = {
  dischargeMinutes: {
    value: 90,
    source: { ...AS_1379, clause: '4.2' },
    note: 'from the start of mixing, or before placing becomes impossible, whichever is earlier',
  },
  slumpTolerance,
  concreteLow: { value: 5, source: AS_1379 },
  concreteHigh: { value: 35, source: AS_1379 },
  airLow: { value: null, source: AS_1379, gap: 'air temperature: no confirmed value in AS 1379' },
  remix: {
    turns: null,
    minutes: null,
    source: AS_1379,
    gap: 're-mixing after water or admixture: no confirmed value in AS 1379',
  },
  underDelivery: null,
}
