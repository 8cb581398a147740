import { STAND, VIBRATORS } from '@castwright/engine/pour'
import type { EntryDraft } from '../../record/index.ts'
import { type PanelPlace, stamped } from './act.ts'

/** Where the chute or skip stands, and which heads work: the plan of the pour follows both. */
export const settlePlacing = {
  stand: {
    label: 'Record the place',
    draft: (place: PanelPlace, [x, y]: readonly [number, number]): EntryDraft =>
      settled(place, STAND, { x: Math.round(x), y: Math.round(y) }, 'mm'),
  },
  vibrators: {
    label: 'Record the heads',
    draft: (place: PanelPlace, heads: Readonly<Record<string, number>>): EntryDraft =>
      settled(place, VIBRATORS, { ...heads }, ''),
  },
} as const

function settled(place: PanelPlace, check: string, value: Record<string, number>, unit: string): EntryDraft {
  return {
    ...stamped(place),
    kind: 'value',
    step: 'place',
    check,
    value,
    ...(unit === '' ? {} : { unit }),
    verdict: 'unknown',
    reason: 'settled on the floor: the plan follows it',
  }
}
