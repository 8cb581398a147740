import type { ValueOf } from '@castwright/record'
import { type EntryAct, stamped } from './act.ts'

export type SetInput = ValueOf<'specimen-set'>

/** Specimens made from one load of this pour, and when each is to be tested. */
export const recordSet: EntryAct<SetInput> = {
  name: 'record-set',
  label: 'Record the specimens',
  draft: (place, { size, docket, ...set }) => ({
    ...stamped(place),
    kind: 'specimen-set',
    step: 'deliver',
    value: {
      ...set,
      ...(size === undefined ? {} : { size }),
      ...(docket === undefined ? {} : { docket }),
    },
  }),
}
