import type { StepId } from '../steps/steps.ts'
import type { Asked } from '../working/asked.ts'
import { COMMON_PRACTICE } from '../working/source.ts'

type Row = readonly [step: StepId, id: string, what: string, note: string]

const TICKS: readonly Row[] = [
  [
    'as-built',
    'openings-placed',
    'Openings, inserts and cast-ins are where they are drawn',
    'Measure from the same two edges as the drawing does.',
  ],
  [
    'as-built',
    'surface',
    'Surface is as the reference panel of this yard',
    'Blowholes, colour, edges. Take a photo in flat light.',
  ],
  [
    'as-built',
    'no-cracks',
    'No cracks, spalls or broken corners',
    'What is found is a defect, with its place and a photo.',
  ],
  [
    'as-built',
    'label-fixed',
    'Label is fixed and reads',
    'It must still be read when the panel stands among others.',
  ],
  [
    'store',
    'supports-placed',
    'Supports are where they are planned, in one line above each other',
    'Two supports near the pick lines; a third rocks.',
  ],
  [
    'store',
    'held-upright',
    'Held against toppling before the hook lets go',
    'Both faces, and against the wind of the night.',
  ],
  ['store', 'ground-bears', 'Rack and ground carry it without sinking', 'Look again after rain.'],
  [
    'load',
    'label-matches',
    'Label, docket and panel are the same',
    'Read the label on the panel, not the list.',
  ],
  ['load', 'no-new-damage', 'No damage since it was put in store', 'Edges and corners, both faces.'],
  ['load', 'supports-on-trailer', 'Supports on the trailer are where they are planned', 'As in store.'],
  [
    'load',
    'restraint-on',
    'Restraint is on before the hook lets go',
    'Edge protection under each strap or chain.',
  ],
  [
    'hand-over',
    'passport-given',
    'Passport was handed over with the panel',
    'Who takes it can check it without this yard.',
  ],
]

const WORDS: readonly Row[] = [
  ['store', 'stored-at', 'Rack and place', 'As painted on the rack.'],
  ['load', 'trailer', 'Trailer and its number plate', ''],
  ['hand-over', 'received-by', 'Received by', 'Name of the person and of the site.'],
]

/** What must be seen once a panel is out of its mould, whatever its shape. */
export function handlingAsked(): Asked[] {
  return [
    ...TICKS.map((row) => asked(row, 'tick')),
    ...WORDS.map((row): Asked => ({ ...asked(row, 'text'), recordOnly: true })),
  ]
}

function asked([step, id, what, note]: Row, kind: 'tick' | 'text'): Asked {
  return {
    id,
    step,
    what,
    kind,
    unit: '',
    source: COMMON_PRACTICE,
    ...(note === '' ? {} : { note }),
  }
}
