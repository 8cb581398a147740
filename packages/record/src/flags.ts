/** Something about the record itself that a person should look at; shown on Day and in Proof. */
export interface Flag {
  readonly kind:
    | 'late' // arrived after a hold opened and would have kept it shut; raised as a defect too
    | 'gap' // a device's counter jumps: entries are missing here
    | 'fork' // two entries of a device claim one place in its chain
    | 'clock' // the device's clock differed by more than two minutes
    | 'conflict' // two devices say different things of one check
    | 'revision' // one revision came with two different drawings
    | 'entitled' // made by a role that may not; left out of the state
    | 'astray' // points at an entry that is not here, or of another subject or form; left out of the state
    | 'twice' // one id with two different contents; the first stored stands
  /** Subject id of the panel, or null where it is about a device or the yard. */
  readonly panel: string | null
  readonly device: string | null
  /** Entry ids, sorted. */
  readonly entries: readonly string[]
  readonly text: string
}

/** More than this between device and server clock is said, ms. */
export const CLOCK_TOLERANCE = 120_000

/** One order for every machine. */
export function sortFlags(flags: readonly Flag[]): Flag[] {
  return flags
    .map((flag) => ({
      flag,
      key: [flag.kind, flag.panel ?? '', flag.device ?? '', ...flag.entries, flag.text].join('\u0000'),
    }))
    .sort((a, b) => (a.key === b.key ? 0 : a.key < b.key ? -1 : 1))
    .map(({ flag }) => flag)
}
