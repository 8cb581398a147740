import type { StepId } from '@castwright/engine/steps'
import { type EntryAct, stamped } from './act.ts'

export interface SpecimenInput {
  readonly step: StepId
  readonly specimen: string
  readonly kind: 'cylinder' | 'cube' | 'probe'
  /** Hours from mixing to the test. */
  readonly age: number
  /** MPa */
  readonly strength: number
  /** With the panel, or by the standard; not said for a probe. */
  readonly cured?: 'panel' | 'standard'
}

/** A test result of this pour. */
export const recordSpecimen: EntryAct<SpecimenInput> = {
  name: 'record-specimen',
  label: 'Record the result',
  draft: (place, { step, specimen, kind, age, strength, cured }) => ({
    ...stamped(place),
    kind: 'specimen',
    step,
    value: { specimen, kind, age, strength, ...(cured === undefined ? {} : { cured }) },
    unit: 'MPa',
  }),
}
