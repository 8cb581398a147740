import type { Source } from '../../../working/source.ts'
import type { ActRule } from '../../bar-acts.ts'

const BEND: Source = { standard: 'ACI 318-19', clause: '25.3', status: 'seen' }
const FIELD: Source = { standard: 'ACI 318-19', clause: '26.6.3', status: 'from memory' }
const HEAT: Source = { standard: 'ACI 318, commentary', clause: 'field bending', status: 'seen' }
const CROSSING: Source = { standard: 'ACI 318-19', clause: '26.6.4', status: 'from memory' }

/** Bars are bent cold before they are placed; all else is for the licensed design professional. */
export const BENDING_ACTS: readonly ActRule[] = [
  { acts: ['bend once'], answer: 'yes', conditions: [], source: BEND },
  {
    acts: ['straighten', 're-bend cold', 'bend out and back'],
    answer: 'engineer',
    conditions: [
      'A bar cast in at one end is bent only as the documents show or the licensed design professional permits.',
    ],
    source: FIELD,
  },
  {
    acts: ['re-bend hot', 'heat'],
    madeBy: ['quenched and tempered'],
    answer: 'engineer',
    conditions: [
      'Only where bending cold fails.',
      'Heat takes the hard skin of this bar away for good: no confirmed temperature for it.',
    ],
    source: HEAT,
  },
  {
    acts: ['re-bend hot', 'heat'],
    answer: 'engineer',
    conditions: ['Only where bending cold fails, and to 815 °C (1500 °F) at most.'],
    source: HEAT,
  },
  {
    acts: ['tack weld'],
    answer: 'engineer',
    conditions: ['Crossing bars are not welded together unless the licensed design professional permits it.'],
    source: CROSSING,
  },
]
