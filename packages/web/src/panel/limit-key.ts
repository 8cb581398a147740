import { LEAST_TEMPERATURE_LIMIT, PEAK_LIMIT } from '@castwright/engine/cure'
import { LEAST_STRENGTH_LIMIT } from '@castwright/engine/lift'
import { toleranceKey } from '@castwright/engine/quality'
import type { CardRow } from '@castwright/engine/steps'

/** Rows whose limit an engineer may enter for the yard, by the row's id. */
const KEYS: ReadonlyMap<string, string> = new Map([
  ['peak-temperature', PEAK_LIMIT],
  ['least-temperature', LEAST_TEMPERATURE_LIMIT],
  ['strength', LEAST_STRENGTH_LIMIT],
  ...(['length', 'width', 'thickness', 'squareness', 'bow', 'warp', 'flatness'] as const).map(
    (what): [string, string] => [`built-${what}`, toleranceKey(what)],
  ),
])

/** The key that a limit of this row is entered under; null where the row has a limit, or none can be entered. */
export function limitKey(row: Pick<CardRow, 'id' | 'limit'>): string | null {
  return row.limit === null ? (KEYS.get(row.id) ?? null) : null
}
