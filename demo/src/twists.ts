import type { StepId } from '@castwright/engine/steps'
import type { Asked } from '@castwright/engine/working'
import { type Draft, panelSubject } from '@castwright/record'
import { DEMO_ZONE } from './calendar.ts'
import { DEMO_JOB } from './drawings.ts'
import { at } from './local-time.ts'
import { type DemoPerson, personOf } from './people.ts'
import type { Act } from './telling.ts'

/** What was found other than good, by mark and asked item. */
export const FOUND: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  // Typed with two figures exchanged, corrected before the step was closed.
  N02: { 'built-width': 3520 },
  // Out of square, accepted by the engineer.
  N04: { 'built-squareness': 21 },
  // Too long, nobody has decided yet.
  B03: { 'built-length': 11_428 },
  // Cover at the edge too small: the hold stays shut.
  N06: { 'cover:edge': 19 },
}

/** Steps that are not closed though their time has come: one waits for a decision, one for its second truck. */
export const LEFT_OPEN: Readonly<Record<string, StepId>> = { B03: 'as-built', E03: 'deliver' }

/** Cylinders pressed at seven days; the second of T01 still lies in the tank. */
const SEVEN_DAYS = [
  ['N01-3', '10:50:00', 48.6],
  ['N01-4', '10:50:40', 47.9],
  ['B01-3', '10:51:00', 47.1],
  ['B01-4', '10:51:40', 48.2],
  ['S01-3', '10:52:00', 49.3],
  ['S01-4', '10:52:40', 48.4],
  ['T01-3', '10:53:00', 59.8],
] as const

/** Decisions, corrections and defects: what makes this job unlike the next. */
export function twistActs(
  askedOf: (mark: string, id: string) => Asked,
  judged: (asked: Asked, value: unknown) => Partial<Draft>,
): Act[] {
  const width = askedOf('N02', 'built-width')
  return [
    twist(
      '2026-09-11',
      '08:49:00',
      'lena',
      'N02',
      {
        kind: 'correction',
        step: 'as-built',
        check: 'built-width',
        value: 3252,
        ...judged(width, 3252),
        reason: 'Figures exchanged when typing: the tape reads 3252.',
      },
      { aboutKey: 'N02 built-width' },
    ),
    twist('2026-09-15', '08:48:10', 'ines', 'N04', {
      kind: 'decision',
      step: 'as-built',
      check: 'built-squareness',
      value: null,
      reason:
        'Diagonals differ by 21 mm against 18. The joint at this panel is 30 mm wide and takes it; agreed with the site.',
    }),
    twist(
      '2026-09-14',
      '09:40:00',
      'lena',
      'S03',
      {
        kind: 'defect',
        step: 'as-built',
        value: { text: 'Honeycomb under the window sill, 120 mm wide and 15 mm deep.', place: [3850, 960] },
      },
      { key: 'S03 honeycomb' },
    ),
    twist(
      '2026-09-14',
      '11:05:00',
      'tom',
      'S03',
      {
        kind: 'disposition',
        value: { decision: 'repair' },
        reason: 'Cut back to sound concrete, fill with the yard’s repair mortar, cure three days damp.',
      },
      { aboutKey: 'S03 honeycomb' },
    ),
    twist(
      '2026-09-16',
      '08:20:00',
      'orla',
      'S03',
      {
        kind: 'inspection',
        value: { verdict: 'pass' },
        reason: 'Filled, sounded with the hammer, no hollow place.',
      },
      { aboutKey: 'S03 honeycomb' },
    ),
    twist('2026-09-16', '13:48:00', 'sam', 'G01', {
      kind: 'defect',
      step: 'store',
      value: {
        text: 'Lower left corner spalled in the rack, 60 mm long, 20 mm deep, a bar end shows.',
        place: [40, 40],
      },
    }),
    ...SEVEN_DAYS.map(([specimen, time, strength]) =>
      twist('2026-09-16', time, 'lena', specimen.slice(0, 3), {
        kind: 'specimen',
        step: 'cure',
        value: { specimen, kind: 'cylinder', age: 170, strength, cured: 'standard' },
      }),
    ),
  ]
}

function twist(
  day: string,
  time: string,
  person: string,
  mark: string,
  draft: Omit<Draft, 'subject'>,
  keys: Pick<Act, 'key' | 'aboutKey'> = {},
): Act {
  const who: DemoPerson = personOf(person)
  return {
    at: at(day, time, DEMO_ZONE),
    device: who.role === 'floor' ? 'tablet-beds-3-4' : 'office',
    person: who,
    draft: { ...draft, subject: panelSubject(DEMO_JOB, mark), revision: 'A' },
    ...keys,
  }
}
