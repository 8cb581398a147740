import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const BULLETIN: Source = {
  standard: 'Concrete New Zealand, Information Bulletin IB 79',
  clause: 'bars meant to be bent out and back',
  status: 'seen',
}

/** Starter bars cast in folded and bent out later. */
export const STARTER_ACTS: readonly ActRule[] = [
  {
    acts: ['bend out and back'],
    grades: ['300E'],
    sizes: { from: 0, to: 16 },
    answer: 'yes',
    conditions: [
      'Planned on the drawing.',
      'The bend starts at least 3 bar diameters clear of the concrete.',
      'Both times on the inside diameter of NZS 3109 Table 3.1.',
      'Once only.',
    ],
    source: BULLETIN,
  },
  {
    acts: ['bend out and back'],
    grades: ['300E'],
    answer: 'no',
    conditions: ['Starters to be bent out and back are 16 mm at most.'],
    source: BULLETIN,
  },
  {
    acts: ['bend out and back'],
    grades: ['500E'],
    answer: 'no',
    conditions: ['Bending out is bending back: use 300E of 16 mm at most.'],
    source: BULLETIN,
  },
]
