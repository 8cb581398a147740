import type { Drawing } from '../panel/drawing.ts'
import type { Asked } from '../working/asked.ts'
import { COMMON_PRACTICE, commonPractice } from '../working/source.ts'
import type { Yard } from '../yard/yard.ts'

/** Ids of what is asked at the first lift and read again by its conditions. */
export const RIGGING_ASKED = 'rigging'
export const CRANE_ASKED = 'crane'
export const RADIUS_ASKED = 'crane-radius'
export const BELOW_HOOK_ASKED = 'below-hook'

/** What must be seen or measured before the first lift. */
export function stripAsked({
  drawing,
  yard,
}: {
  readonly drawing: Drawing
  readonly yard: Yard | null
}): readonly Asked[] {
  const ticks: readonly (readonly [id: string, what: string, note: string])[] = [
    [
      'edges-free',
      'Side forms, box-outs and clamps are off',
      'Nothing but the mould face may still hold the panel.',
    ],
    [
      'inserts-clean',
      'Inserts are clean and undamaged, clutches lock',
      'Insert and clutch are parts made to work together.',
    ],
    [
      'release',
      'Release is planned: slow, level, no jerking',
      'If it sticks, stop the hook and free the edges again.',
    ],
    [
      'zone-clear',
      'Nobody stands under or beside the panel',
      'Only who guides the lift stays, outside the fall zone.',
    ],
    [
      'wind',
      'Wind is within what the crane’s manual allows for this panel',
      'A panel is a sail; the crane’s own manual decides.',
    ],
  ]
  return [
    ...ticks.map(
      ([id, what, note]): Asked => ({
        id,
        step: 'strip',
        what,
        kind: 'tick',
        unit: '',
        source: COMMON_PRACTICE,
        note,
      }),
    ),
    ...(drawing.rigging === undefined ? [choice(RIGGING_ASKED, 'Rigging in use', yard?.rigging ?? [])] : []),
    choice(CRANE_ASKED, 'Crane in use', yard?.cranes ?? []),
    number(
      RADIUS_ASKED,
      'Greatest radius of the crane in this lift',
      'mm',
      'From the slewing axis to the hook; it grows under load.',
    ),
    number(
      BELOW_HOOK_ASKED,
      'Mass of hook block, slings and beam',
      'kg',
      'The chart counts everything that hangs at the head.',
    ),
  ]
}

function choice(id: string, what: string, listed: readonly { readonly mark: string }[]): Asked {
  return {
    id,
    step: 'strip',
    what,
    kind: 'choice',
    unit: '',
    choices: listed.map(({ mark }) => ({ value: mark, good: true })),
    ...(listed.length > 0 ? {} : { unknown: [`the yard lists none for: ${what}`] }),
    source: commonPractice('gear that is listed, rated and in date'),
  }
}

function number(id: string, what: string, unit: string, note: string): Asked {
  return {
    id,
    step: 'strip',
    what,
    kind: 'number',
    unit,
    low: 0,
    high: null,
    source: COMMON_PRACTICE,
    note,
  }
}
