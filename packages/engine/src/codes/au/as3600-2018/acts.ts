import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'
import { PINS_BENT_BACK } from './bend-back.ts'

const PINS: Source = { standard: 'AS 3600:2018', clause: '17.2.3.2', status: 'from memory' }
const GENERAL: Source = { standard: 'AS 3600:2018', clause: '17.2.3.1', status: 'from memory' }
const ROADS: Source = {
  standard: 'NSW Roads and Maritime, bar shapes B0013, edition not noted',
  clause: 'notes',
  status: 'seen',
}

/** Over it the road authority's sheet forbids what AS 3600 lets be done on a larger pin, mm. */
const LARGEST_BENT_BACK = 24

const BACK = ['straighten', 're-bend cold', 'bend out and back'] as const
const ONCE_THERE = 'Not bent again within 20 bar diameters of that place.'
const NO_WELD = 'No weld within 3 bar diameters of the place.'

/** Bending and bending back of 250N and 500N; 500L has its strength from cold work and is not in here. */
export const BENDING_ACTS: readonly ActRule[] = [
  { acts: ['bend once'], answer: 'yes', conditions: [], source: PINS },
  ...PINS_BENT_BACK.filter(({ to }) => to <= LARGEST_BENT_BACK).map(
    ({ from, to, times }): ActRule => ({
      acts: BACK,
      grades: ['250N', '500N'],
      sizes: { from, to },
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
    sizes: { from: LARGEST_BENT_BACK + 0.001, to: 1000 },
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
