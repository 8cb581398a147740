import type { CardRow } from '@castwright/engine/steps'

/** More met rows than this are put away under one line. */
export const MOST_MET = 6

/** Rows of a card in the order in which a person needs them: what fails, what is not known, what is signed, then what is met. */
export function orderRows(rows: readonly CardRow[]): {
  readonly open: readonly CardRow[]
  readonly met: readonly CardRow[]
} {
  const fails = rows.filter((row) => row.verdict === 'fail' && row.replaced === undefined)
  const unknown = rows.filter((row) => row.verdict === 'unknown' && row.replaced === undefined)
  const replaced = rows.filter((row) => row.verdict !== 'pass' && row.replaced !== undefined)
  return { open: [...fails, ...unknown, ...replaced], met: rows.filter(({ verdict }) => verdict === 'pass') }
}
