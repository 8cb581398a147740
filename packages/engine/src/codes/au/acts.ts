import type { Source } from '../../working/source.ts'
import { HEAT_UNKNOWN, MADE_ACTS, ZINC_ACTS } from '../any-bar-acts.ts'
import { WELD_MILD } from '../asnzs1554-3/acts.ts'
import type { ActRules } from '../bar-acts.ts'
import { BENDING_ACTS } from './as3600-2018/acts.ts'

const ZINC: Source = {
  standard: 'Galvanizers Association of Australia, design manual',
  clause: 'galvanised reinforcement',
  status: 'seen',
}
const STRAIN_AGED: Source = {
  standard: 'American Galvanizers Association, bending of reinforcing bar',
  clause: 'strain-age embrittlement',
  status: 'seen',
}
const WELDING: Source = {
  standard: 'AS/NZS 1554.3, edition not noted',
  clause: '',
  status: 'from memory',
}

export const acts: ActRules = {
  processes: {
    '250N': ['hot rolled'],
    '500N': ['micro-alloyed', 'quenched and tempered'],
    '500L': ['cold worked'],
  },
  standards: {},
  rules: [
    ...ZINC_ACTS,
    ...BENDING_ACTS,
    WELD_MILD,
    {
      acts: ['weld'],
      madeBy: ['micro-alloyed'],
      answer: 'yes',
      conditions: [
        'To AS/NZS 1554.3, by a procedure and a welder qualified for it.',
        'Not within 3 bar diameters of a bend that was straightened.',
      ],
      source: WELDING,
    },
    {
      acts: ['weld'],
      madeBy: ['quenched and tempered'],
      answer: 'engineer',
      conditions: [
        'Heat takes the hard skin away: only by a procedure to AS/NZS 1554.3 that the engineer has approved for this bar.',
        'Not within 3 bar diameters of a bend that was straightened.',
      ],
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
      madeBy: ['cold worked'],
      answer: 'engineer',
      conditions: ['Cold bent and galvanised, this bar may turn brittle with time.'],
      source: STRAIN_AGED,
    },
    {
      acts: ['galvanise'],
      answer: 'yes',
      conditions: ['Bends, made before or after, on the larger pin of galvanised bar.'],
      source: ZINC,
    },
    ...MADE_ACTS,
    HEAT_UNKNOWN,
  ],
}
