import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const WELDING: Source = { standard: 'AWS D1.4, edition not noted', clause: '', status: 'from memory' }

/** A706 is made to be welded, A615 is not. */
export const WELD_ACTS: readonly ActRule[] = [
  {
    acts: ['weld'],
    standard: 'A706',
    answer: 'yes',
    conditions: ['To AWS D1.4, by a procedure and a welder qualified for it.'],
    source: WELDING,
  },
  {
    acts: ['weld'],
    standard: 'A615',
    answer: 'engineer',
    conditions: ['Only with the chemistry of the heat known, and preheated for it, to AWS D1.4.'],
    source: WELDING,
  },
  {
    acts: ['weld'],
    answer: 'engineer',
    conditions: [
      'The bar does not say whether it is ASTM A706 (mark W): it is taken as A615, with the chemistry of the heat known and preheated for it, to AWS D1.4.',
    ],
    source: WELDING,
  },
]
