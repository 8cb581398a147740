import type { EntryDraft } from '../../record/index.ts'

export interface AirInput {
  /** Name of the yard. */
  readonly yard: string
  /** UTC with milliseconds. */
  readonly at: string
  /** °C, %, km/h half a metre over the panel; null where not read. */
  readonly air: number | null
  readonly humidity: number | null
  readonly wind: number | null
}

/** Height at which wind is read at a panel, m: that of the drying formulas. */
const AT_PANEL = 0.5

/** Air read by hand at a panel: weather of the yard, since every panel of the hour may use it. */
export const recordAir = {
  name: 'record-air',
  label: 'Record',
  draft: ({ yard, at, air, humidity, wind }: AirInput): EntryDraft => ({
    subject: { kind: 'yard', id: yard },
    kind: 'weather',
    value: {
      readings: [{ at, air, humidity, wind, ...(wind === null ? {} : { windHeight: AT_PANEL }) }],
    },
  }),
}
