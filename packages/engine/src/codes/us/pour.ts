import type { PourRules } from '../pour-rules.ts'
import { slumpTolerance } from './astm-c94-21/slump-tolerance.ts'

const ACI_305_1 = { standard: 'ACI 305.1, edition not noted', clause: '', status: 'from memory' } as const

export const pour: PourRules = {
  dischargeMinutes: {
    value: null,
    source: { standard: 'ASTM C94/C94M-21', clause: '6.1.10, 12.9', status: 'seen' },
    gap: 'greatest age at discharge: no default since 2021; purchaser or producer states it, enter it with the mix',
    note: 'editions to 2020: 90 min',
  },
  slumpTolerance,
  concreteLow: {
    value: 7,
    source: {
      standard: 'NPCA, Precautions for cold-weather concreting, 2012',
      clause: 'placing, 45 °F',
      status: 'seen',
    },
  },
  concreteHigh: { value: 35, source: ACI_305_1 },
  airLow: { value: null, source: ACI_305_1, gap: 'air temperature: no confirmed value' },
  remix: {
    turns: 30,
    minutes: null,
    source: { standard: 'ASTM C94/C94M-21', clause: '12.7', status: 'from memory' },
  },
  underDelivery: null,
}
