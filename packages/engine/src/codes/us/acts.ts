import { commonPractice, type Source } from '../../working/source.ts'
import { HEAT_UNKNOWN, MADE_ACTS, ZINC_ACTS } from '../any-bar-acts.ts'
import type { ActRules, MadeBy } from '../bar-acts.ts'
import { BENDING_ACTS } from './aci318-19/acts.ts'
import { WELD_ACTS } from './aws-d1-4/acts.ts'

const COATED: Source = { standard: 'ASTM A767, edition not noted', clause: 'Table 2', status: 'seen' }

/** A615 and A706 name no process: rolled, alloyed or quenched. */
const ROLLED: readonly MadeBy[] = ['hot rolled', 'micro-alloyed', 'quenched and tempered']

export const acts: ActRules = {
  processes: { '40': ROLLED, '60': ROLLED, '80': ROLLED, '100': ROLLED },
  standards: { A615: ['40', '60', '80', '100'], A706: ['60', '80'] },
  rules: [
    ...ZINC_ACTS,
    ...BENDING_ACTS,
    ...WELD_ACTS,
    {
      acts: ['galvanise'],
      madeBy: ['quenched and tempered'],
      answer: 'engineer',
      conditions: ['Quenched and tempered bar: ask the engineer first.'],
      source: commonPractice('galvanising of quenched and tempered bar'),
    },
    {
      acts: ['galvanise'],
      answer: 'yes',
      conditions: ['Bends made before it on the inside diameter of ASTM A767 Table 2.'],
      source: COATED,
    },
    ...MADE_ACTS,
    HEAT_UNKNOWN,
  ],
}
