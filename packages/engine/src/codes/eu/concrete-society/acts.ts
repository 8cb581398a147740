import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const NOTE: Source = {
  standard: 'Concrete Society, note on straightening and rebending',
  clause: '',
  status: 'seen',
}

/** Advice of the United Kingdom on bars that are bent out of a strip, and on heating errors. */
export const UK_ADVICE: readonly ActRule[] = [
  {
    acts: ['bend out and back'],
    grades: ['B500B', 'B500C'],
    sizes: { from: 0, to: 12 },
    answer: 'yes',
    conditions: ['Continuity bars planned for it, bent out once.'],
    source: NOTE,
  },
  {
    acts: ['bend out and back'],
    grades: ['B500B', 'B500C'],
    sizes: { from: 0, to: 16 },
    answer: 'engineer',
    conditions: ['Planned continuity bars go to 12 mm.'],
    source: NOTE,
  },
  {
    acts: ['bend out and back'],
    grades: ['B500B', 'B500C'],
    answer: 'no',
    conditions: ['Over 16 mm use couplers.'],
    source: NOTE,
  },
  {
    acts: ['re-bend hot'],
    madeBy: ['quenched and tempered'],
    answer: 'engineer',
    conditions: [
      'Heating to correct an error is hard to control and hurts the concrete beside it.',
      'Heat takes the hard skin of this bar away for good: no confirmed temperature for it.',
    ],
    source: NOTE,
  },
  {
    acts: ['re-bend hot'],
    grades: ['B500B', 'B500C'],
    answer: 'engineer',
    conditions: ['Heating to correct an error is hard to control and hurts the concrete beside it.'],
    source: NOTE,
  },
]
