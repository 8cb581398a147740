import { commonPractice, type Source } from '../../working/source.ts'
import { HEAT_UNKNOWN, MADE_ACTS, ZINC_ACTS } from '../any-bar-acts.ts'
import { NO_TACK_WELD, WELD_MILD } from '../asnzs1554-3/acts.ts'
import type { ActRules } from '../bar-acts.ts'
import { STARTER_ACTS } from './ib79/acts.ts'
import { ADVISED_500E, BENDING_ACTS } from './nzs3109-1997/acts.ts'

const ZINC: Source = {
  standard: 'Galvanizers Association of Australia, design manual',
  clause: 'galvanised reinforcement',
  status: 'seen',
}

export const acts: ActRules = {
  processes: { '300E': ['hot rolled'], '500E': ['micro-alloyed', 'quenched and tempered'] },
  standards: {},
  rules: [
    ...ZINC_ACTS,
    ...BENDING_ACTS,
    ...STARTER_ACTS,
    ...ADVISED_500E,
    WELD_MILD,
    NO_TACK_WELD,
    {
      acts: ['galvanise'],
      madeBy: ['quenched and tempered'],
      answer: 'engineer',
      conditions: ['Advice for quenched and tempered bar differs: ask the engineer first.'],
      source: commonPractice('galvanising of quenched and tempered 500E'),
    },
    {
      acts: ['galvanise'],
      answer: 'yes',
      conditions: ['Bends, made before or after, on the larger inside diameter of galvanised bar.'],
      source: ZINC,
    },
    ...MADE_ACTS,
    HEAT_UNKNOWN,
  ],
}
