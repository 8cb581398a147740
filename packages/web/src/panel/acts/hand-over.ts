import { type EntryAct, stamped } from './act.ts'

export interface HandOverInput {
  /** SHA-256 of the passport file, hex. */
  readonly sha256: string
  readonly to: string
}

/** The passport file was handed over: which bytes, to whom. */
export const handOver: EntryAct<HandOverInput> = {
  name: 'hand-over',
  label: 'Save and record the handing over',
  draft: (place, { sha256, to }) => ({
    ...stamped(place),
    kind: 'passport',
    step: 'hand-over',
    value: { sha256, ...(to.trim() === '' ? {} : { to: to.trim() }) },
  }),
}
