import { type EntryAct, stamped } from './act.ts'

export interface DocketInput {
  readonly number: string
  readonly truck?: string
  readonly mix?: string
  /** UTC with milliseconds. */
  readonly batched?: string
  readonly arrived?: string
  readonly discharged?: string
  /** m³ */
  readonly volume?: number
  /** mm */
  readonly slump?: number
  /** °C */
  readonly temperature?: number
  /** l */
  readonly waterAdded?: number
}

/** What the delivery docket says and what was measured at the truck. */
export const recordDocket: EntryAct<DocketInput> = {
  name: 'record-docket',
  label: 'Record the docket',
  draft: (place, docket) => ({
    ...stamped(place),
    kind: 'docket',
    step: 'deliver',
    value: Object.fromEntries(Object.entries(docket).filter(([, value]) => value !== undefined)),
  }),
}
