import type { CardRow } from '@castwright/engine/steps'
import type { ValueOf } from './values.ts'

/**
 * What an engineer signs when signing a difference: the row of the strip card as it stands, and the reference of the lifting design
 * that it is held beside. Only rows with `difference.may` are signed.
 */
export function differenceValue(row: CardRow, reference: string): ValueOf<'difference'> {
  return {
    reference,
    verdict: row.verdict === 'fail' ? 'fail' : 'unknown',
    demand: figure(row.demand),
    limit: figure(row.limit),
    unit: row.unit,
    missing: [...row.unknown],
  }
}

function figure(value: number | string | null): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null
}
