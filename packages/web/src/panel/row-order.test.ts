import type { CardRow } from '@castwright/engine/steps'
import { expect, it } from 'vitest'
import { orderRows } from './row-order.ts'

function row(id: string, verdict: CardRow['verdict'], replaced?: string): CardRow {
  return { id, verdict, ...(replaced === undefined ? {} : { replaced }) } as CardRow
}

it('puts fails first, then what is not known, then signed differences, and never a fail or a not-known among what is met', () => {
  const rows = [
    row('a', 'pass'),
    row('b', 'unknown', 'difference signed'),
    row('c', 'unknown'),
    row('d', 'fail'),
    row('f', 'fail', 'difference signed'),
    row('e', 'pass'),
  ]
  const { open, met } = orderRows(rows)
  expect(open.map(({ id }) => id)).toEqual(['d', 'c', 'b', 'f'])
  expect(met.map(({ id }) => id)).toEqual(['a', 'e'])
})
