import type { CardRow } from '@castwright/engine/steps'
import { expect, it } from 'vitest'
import { differenceValue } from './difference-value.ts'
import { isValueOf } from './values.ts'

const row = { verdict: 'fail', demand: 2.4, limit: 1.9, unit: 'MPa', unknown: [] } as unknown as CardRow

it('carries the row as it stood and the lifting design', () => {
  expect(differenceValue(row, 'LD-3')).toEqual({
    reference: 'LD-3',
    verdict: 'fail',
    demand: 2.4,
    limit: 1.9,
    unit: 'MPa',
    missing: [],
  })
})

it.each<[string, Partial<CardRow>]>([
  ['nothing known', { verdict: 'unknown', demand: null, limit: null, unknown: ['lift.factor: no value'] }],
  ['words in the place of numbers', { demand: 'none', limit: '80 to 120' }],
  ['numbers that are none', { demand: Number.NaN, limit: Number.POSITIVE_INFINITY }],
])('is a value that the record takes: %s', (_name, change) => {
  const value = differenceValue({ ...row, ...change }, 'LD-3')
  expect(isValueOf('difference', value)).toBe(true)
  expect(JSON.parse(JSON.stringify(value))).toEqual(value)
})
