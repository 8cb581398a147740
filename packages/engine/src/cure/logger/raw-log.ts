/** One row of a logger's file: its row in the file, hours from mixing, and a temperature a channel, °C; null where it gave none. */
export interface LogRow {
  readonly row: number
  readonly hours: number
  readonly celsius: readonly (number | null)[]
}

/** A logger's file as it was read: rows in the order of the file, whatever their times are. */
export interface RawLog {
  readonly channels: readonly string[]
  readonly rows: readonly LogRow[]
}

export const FAULT_KINDS = ['clock', 'gap', 'range', 'spike', 'jump', 'swapped', 'stands'] as const
export type FaultKind = (typeof FAULT_KINDS)[number]

/** Something in a log that a person must look at. Nothing is mended here. */
export interface LogFault {
  readonly kind: FaultKind
  /** Channel by its place; null where it is about time. */
  readonly channel: number | null
  /** Rows of the file, both included. */
  readonly rows: readonly [from: number, to: number]
  /** Hours from mixing, both included. */
  readonly hours: readonly [from: number, to: number]
  readonly text: string
}
