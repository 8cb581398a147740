import { commonPractice, type Source } from '../../working/source.ts'
import { HEAT_UNKNOWN, MADE_ACTS, ZINC_ACTS } from '../any-bar-acts.ts'
import type { ActRules } from '../bar-acts.ts'
import { UK_ADVICE } from './concrete-society/acts.ts'

const BEND: Source = { standard: 'EN 1992-1-1:2004', clause: 'Table 8.1N', status: 'seen' }
const BACK: Source = { standard: 'EN 13670:2009', clause: '6.3', status: 'from memory' }
const WELDING: Source = { standard: 'EN 1992-1-1:2004', clause: '3.2.5', status: 'from memory' }

/** What the make forbids comes before the rules of the place: cold worked bar is in none of them. */
export const acts: ActRules = {
  processes: {
    B500A: ['cold worked'],
    B500B: ['micro-alloyed', 'quenched and tempered', 'cold worked'],
    B500C: ['micro-alloyed', 'quenched and tempered'],
  },
  standards: {},
  rules: [
    ...ZINC_ACTS,
    { acts: ['bend once'], answer: 'yes', conditions: [], source: BEND },
    ...MADE_ACTS,
    ...UK_ADVICE,
    {
      acts: ['straighten', 're-bend cold'],
      answer: 'engineer',
      conditions: ['Not unless the specification of the job has a procedure for it.'],
      source: BACK,
    },
    {
      acts: ['weld'],
      madeBy: ['micro-alloyed'],
      answer: 'yes',
      conditions: [
        'To EN ISO 17660, on bar that its certificate calls weldable to EN 10080.',
        'Bends near a weld need larger mandrels.',
      ],
      source: WELDING,
    },
    {
      acts: ['weld'],
      answer: 'engineer',
      conditions: ['Heat takes the hard skin away: to EN ISO 17660, by a procedure approved for this bar.'],
      source: WELDING,
    },
    {
      acts: ['tack weld'],
      answer: 'unknown',
      conditions: ['tack weld: no confirmed rule of this family'],
      source: WELDING,
    },
    {
      acts: ['galvanise'],
      answer: 'engineer',
      conditions: ['No confirmed inside diameter for bends of galvanised bar in this family.'],
      source: commonPractice('galvanising of bars in Europe'),
    },
    HEAT_UNKNOWN,
  ],
}
