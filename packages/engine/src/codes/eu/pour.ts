import type { PourRules } from '../pour-rules.ts'
import { slumpTolerance } from './en206-2013/slump-tolerance.ts'

const EN_206 = { standard: 'EN 206:2013+A2', clause: '', status: 'from memory' } as const

export const pour: PourRules = {
  dischargeMinutes: {
    value: null,
    source: EN_206,
    gap: 'greatest age at discharge: EN 206 leaves it to the national annex; enter it with the mix',
    note: 'BS 8500-2: 120 in a truck mixer, 60 otherwise; DIN 1045-3: 90 in a truck mixer, 45 otherwise',
  },
  slumpTolerance,
  concreteLow: { value: 5, source: EN_206 },
  concreteHigh: { value: null, source: EN_206, gap: 'highest concrete temperature: EN 206 gives none' },
  airLow: { value: null, source: EN_206, gap: 'air temperature: EN 206 gives none' },
  remix: { turns: null, minutes: { perCubicMetre: 1, least: 5 }, source: { ...EN_206, clause: '7.5' } },
  underDelivery: null,
}
