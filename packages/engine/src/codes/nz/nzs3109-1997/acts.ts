import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const BEND: Source = { standard: 'NZS 3109:1997', clause: 'Table 3.1', status: 'seen' }
const REBEND: Source = {
  standard: 'NZS 3109:1997',
  clause: 'as restated in Practice Advisory 11, building.govt.nz',
  status: 'seen',
}
const MILD: Source = { standard: 'NZS 3109:1997', clause: '3.3', status: 'seen' }
const HOT: Source = { standard: 'NZS 3109:1997', clause: '3.3.8 (Amendment 2)', status: 'seen' }
const WELD: Source = {
  standard: 'Practice Advisory 11: Grade 500E reinforcing steel, building.govt.nz',
  clause: 'welding',
  status: 'seen',
}

/** Bending, straightening and bending back of bars. */
export const BENDING_ACTS: readonly ActRule[] = [
  { acts: ['bend once'], answer: 'yes', conditions: [], source: BEND },
  {
    acts: ['straighten', 're-bend cold'],
    grades: ['500E'],
    answer: 'no',
    conditions: ['500E is not bent back or straightened cold: cut it off or use it as it is.'],
    source: REBEND,
  },
  {
    acts: ['straighten', 're-bend cold'],
    grades: ['300E'],
    answer: 'yes',
    conditions: ['Once, with the bar at ambient temperature.', 'A bar that shows a crack is rejected.'],
    source: MILD,
  },
  {
    acts: ['re-bend hot'],
    grades: ['500E'],
    madeBy: ['micro-alloyed'],
    answer: 'engineer',
    conditions: [
      'Only by the hot procedure of NZS 3109 3.3.8 (Amendment 2), which must be at hand: its temperatures have no confirmed value here.',
      'Not bent past the original straight.',
      'It cools by itself, out of rain and wind.',
      'Look at the bend: a cracked bar is rejected.',
    ],
    source: HOT,
  },
  {
    acts: ['re-bend hot'],
    grades: ['500E'],
    madeBy: ['quenched and tempered'],
    answer: 'engineer',
    conditions: [
      'Only by the maker’s written procedure and with the engineer’s approval.',
      'Look at the bend: a cracked bar is rejected.',
    ],
    source: HOT,
  },
  {
    acts: ['re-bend hot'],
    grades: ['300E'],
    answer: 'unknown',
    conditions: ['re-bend hot: no confirmed rule for 300E, which may be bent back cold once'],
    source: MILD,
  },
]

/** Welding and zinc on 500E, by how the bar was made. */
export const ADVISED_500E: readonly ActRule[] = [
  {
    acts: ['weld'],
    grades: ['500E'],
    madeBy: ['quenched and tempered'],
    answer: 'no',
    conditions: ['Quenched and tempered 500E is not welded: heat takes the hard skin away.'],
    source: { ...WELD, standard: 'NZS 3109:1997', clause: REBEND.clause },
  },
  {
    acts: ['weld'],
    grades: ['500E'],
    madeBy: ['micro-alloyed'],
    answer: 'yes',
    conditions: [
      'Lap or butt welds in the shop, to AS/NZS 1554.3, with the evidence of procedure and welder.',
      'Not on site.',
    ],
    source: WELD,
  },
]
