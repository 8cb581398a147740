import type { Signer } from '../../steps/facts.ts'
import type { Check } from '../../working/check.ts'
import type { Source } from '../../working/source.ts'
import type { Verdict } from '../../working/verdict.ts'
import type { Assumed, Step } from '../../working/worked.ts'
import { type DocketField, isRunning, type Load } from './load.ts'

/** One condition of the loads of a pour, by what is on record. `limit` may be words, such as `80 to 130`. */
export interface LoadRow {
  /** `load:<docket>:<what>`, or `loads:<what>` for all of them. */
  readonly id: string
  readonly what: string
  readonly verdict: Verdict
  readonly demand: number | string | null
  readonly limit: number | string | null
  readonly unit: string
  readonly note: string
  readonly source: Source
  readonly working: readonly Step[]
  readonly assumed: readonly Assumed[]
  /** What is missing, where the verdict is `unknown`. */
  readonly unknown: readonly string[]
  /** Entries that it rests on, and when the last of them was seen: a decision made before that does not cover it. */
  readonly rests: readonly string[]
  readonly since: string | null
  /** Who may decide it; left out: lead or engineer. */
  readonly deciders?: readonly Signer['role'][]
  /** What has to end first, in words: nothing is decided before it. */
  readonly waits?: string
}

export type Said = Pick<LoadRow, 'rests' | 'since'>

/** The entries that said some fields of some loads, and the latest time among them. */
export function saidBy(loads: readonly Load[], fields: readonly DocketField[]): Said {
  const found = loads.flatMap(({ said }) => fields.flatMap((field) => said[field] ?? []))
  return joined(...found.map(({ entry, seen }) => ({ rests: [entry], since: seen })))
}

export function joined(...parts: readonly Said[]): Said {
  return {
    rests: [...new Set(parts.flatMap(({ rests }) => rests))],
    since: parts.reduce<string | null>(
      (last, { since }) => (since !== null && (last === null || since > last) ? since : last),
      null,
    ),
  }
}

const BARE = { demand: null, limit: null, unit: '', note: '', working: [], assumed: [], unknown: [] } as const

export function loadRow(
  row: Pick<LoadRow, 'id' | 'what' | 'verdict' | 'source' | 'rests' | 'since'> & Partial<LoadRow>,
): LoadRow {
  return { ...BARE, ...row }
}

/** What a row waits for that needs the end of a load's discharge. */
export function waitsForEnd(load: Load): Pick<LoadRow, 'waits'> {
  return isRunning(load) ? { waits: `Load ${load.number}: still discharging` } : {}
}

/** A comparison as a row. */
export function rowOfCheck(check: Omit<Check, 'step'>, said: Said, change: Partial<LoadRow> = {}): LoadRow {
  return loadRow({
    id: check.id,
    what: check.what,
    verdict: check.verdict,
    demand: check.demand,
    limit: check.limit,
    unit: check.unit,
    note: check.note ?? '',
    source: check.source,
    working: check.working,
    assumed: check.assumed ?? [],
    unknown: check.unknown ?? [],
    ...said,
    ...change,
  })
}

const WHAT: Readonly<Record<string, string>> = {
  mix: 'mix as ordered',
  volume: 'volume as ordered',
  age: 'age at the end of discharge',
  slump: 'slump',
  temperature: 'temperature of the concrete',
  water: 'water added on site',
  remix: 'mixed again after the addition',
  joint: 'wait since the load before',
  twice: 'recorded twice, differently',
  back: 'sent back',
}

/** Id of a condition of one load. */
export function loadRowId(number: string, key: string): string {
  return `load:${number}:${key}`
}

/** Title of a load's row by its id, also where the load is no longer there; null where it is no such id. */
export function loadRowTitle(id: string): string | null {
  if (id === 'loads:volume') return 'Concrete of all loads'
  if (id === 'loads:one-mix') return 'One mix in all loads'
  const parts = /^load:(.+):([a-z-]+)$/.exec(id)
  return parts === null ? null : `Load ${parts[1]}: ${WHAT[parts[2] ?? ''] ?? parts[2]}`
}
