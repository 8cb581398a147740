import type { DocketWords } from '@castwright/engine/pour/loads'
import { type EntryAct, stamped } from './act.ts'

/** What the delivery docket says and what was measured at the truck: all of it, or what is new under the same number. */
export const recordDocket: EntryAct<DocketWords> = {
  name: 'record-docket',
  label: 'Record the docket',
  draft: (place, docket) => ({
    ...stamped(place),
    kind: 'docket',
    step: 'deliver',
    value: docketValue(docket),
  }),
}

/** A docket as the value of an entry: what nobody has said is left out. */
export function docketValue(docket: DocketWords): Record<string, string | number | boolean | string[]> {
  return Object.fromEntries(
    Object.entries(docket).flatMap(([field, value]) =>
      value === undefined ? [] : [[field, Array.isArray(value) ? [...value] : value]],
    ),
  )
}
