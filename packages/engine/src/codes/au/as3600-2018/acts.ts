import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const PINS: Source = { standard: 'AS 3600:2018', clause: '17.2.3.2', status: 'from memory' }
const GENERAL: Source = { standard: 'AS 3600:2018', clause: '17.2.3.1', status: 'from memory' }
const ROADS: Source = {
  standard: 'NSW Roads and Maritime, bar shapes B0013, edition not noted',
  clause: 'notes',
  status: 'seen',
}

const BACK = ['straighten', 're-bend cold', 'bend out and back'] as const
const ONCE_THERE = 'Not bent again within 20 bar diameters of that place.'
const NO_WELD = 'No weld within 3 bar diameters of the place.'

/** Bending and bending back of 250N and 500N; 500L has its strength from cold work and is not in here. */
export const BENDING_ACTS: readonly ActRule[] = [
  { acts: ['bend once'], answer: 'yes', conditions: [], source: PINS },
  ...[
    { sizes: { from: 0, to: 16 }, times: 4 },
    { sizes: { from: 20, to: 24 }, times: 5 },
  ].map(
    ({ sizes, times }): ActRule => ({
      acts: BACK,
      grades: ['250N', '500N'],
      sizes,
      answer: 'yes',
      conditions: [
        `First bend and bend back on a pin of at least ${times} bar diameters, and of what the bend itself asks.`,
        'Cold and once.',
        ONCE_THERE,
        NO_WELD,
      ],
      source: { ...PINS, clause: '17.2.3' },
    }),
  ),
  {
    acts: BACK,
    grades: ['250N', '500N'],
    sizes: { from: 24.001, to: 1000 },
    answer: 'no',
    conditions: [
      'A road authority forbids bending back over 24 mm where AS 3600 asks for a larger pin only: the stricter is taken.',
    ],
    source: ROADS,
  },
  {
    acts: ['re-bend hot'],
    madeBy: ['quenched and tempered'],
    answer: 'engineer',
    conditions: [
      'Bars are bent cold unless the engineer lets them be heated.',
      'Heat takes the hard skin of this bar away for good: no confirmed temperature for it.',
    ],
    source: GENERAL,
  },
  {
    acts: ['re-bend hot'],
    grades: ['250N', '500N'],
    answer: 'engineer',
    conditions: ['Bars are bent cold unless the engineer lets them be heated.'],
    source: GENERAL,
  },
]
