import { commonPractice, type Source } from '../working/source.ts'
import type { ActRule } from './bar-acts.ts'

const ZINC: Source = {
  standard: 'Galvanizers Association of Australia, design manual',
  clause: 'bending, welding and repair of galvanised bar',
  status: 'seen',
}
const THREAD = commonPractice('thread cut into a bar')
const WORKED = commonPractice('bar that has its strength from cold work')

/** Zinc: the same everywhere, and read before the rules of a place. */
export const ZINC_ACTS: readonly ActRule[] = [
  {
    acts: ['heat', 're-bend hot'],
    galvanised: true,
    answer: 'no',
    conditions: ['Never heat galvanised bar: molten zinc makes the steel brittle.'],
    source: ZINC,
  },
  {
    acts: ['galvanise'],
    galvanised: true,
    answer: 'unknown',
    conditions: ['galvanised: the bar is coated already; no confirmed rule for a second coat'],
    source: ZINC,
  },
  {
    acts: ['weld'],
    galvanised: true,
    answer: 'unknown',
    conditions: ['galvanised: no confirmed rule for welding on a coated bar'],
    source: ZINC,
  },
]

/** What the make of the bar says by itself, where a place has no rule of its own. */
export const MADE_ACTS: readonly ActRule[] = [
  {
    acts: ['straighten', 're-bend cold', 're-bend hot', 'bend out and back'],
    madeBy: ['cold worked'],
    answer: 'no',
    conditions: ['Cold work has used up what the bar can bend: bend it once only.'],
    source: WORKED,
  },
  {
    acts: ['weld'],
    madeBy: ['cold worked'],
    answer: 'no',
    conditions: ['Only the welds of the mesh factory; none are added in the yard.'],
    source: WORKED,
  },
  {
    acts: ['thread'],
    madeBy: ['cold worked'],
    answer: 'no',
    conditions: ['Do not cut a thread into cold worked bar.'],
    source: WORKED,
  },
  {
    acts: ['thread'],
    madeBy: ['quenched and tempered'],
    answer: 'engineer',
    conditions: [
      'A cut thread takes off the hard skin: more strength goes than area. The engineer counts what is left.',
    ],
    source: THREAD,
  },
  {
    acts: ['thread'],
    answer: 'engineer',
    conditions: ['A cut thread takes off area, and strength with it. The engineer counts what is left.'],
    source: THREAD,
  },
]

/** Last of all: no confirmed value for a heated bar in any place. */
export const HEAT_UNKNOWN: ActRule = {
  acts: ['heat'],
  answer: 'unknown',
  conditions: ['heat: no confirmed temperature up to which the bar keeps its strength'],
  source: commonPractice('heating of bars'),
}
