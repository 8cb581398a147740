// Limits of loads with their published sources.
import { describe, expect, it } from 'vitest'
import { codeFamily, type FamilyId } from '../../codes/index.ts'
import { jointMinutes } from '../load-times.ts'
import { GOOD_LOAD, loadOf } from './example-load.ts'
import type { DocketWords } from './load.ts'
import { loadRows } from './load-rows.ts'

function verdictOf(family: FamilyId, key: string, words: Partial<DocketWords>, stated: number | null = null) {
  const found = loadRows({
    loads: [loadOf({ ...GOOD_LOAD, ...words })],
    order: { mix: 'M40', strength: 40, slump: null, dischargeMinutes: stated, net: 1, mixes: [] },
    family: codeFamily(family),
    air: () => null,
  })
  return found.find(({ id }) => id === `load:7001:${key}`)?.verdict
}

const aged = (minutes: number): Partial<DocketWords> => ({
  discharged: new Date(Date.parse(GOOD_LOAD.batched ?? '') + minutes * 60_000).toISOString(),
})

describe('age at the end of discharge', () => {
  it.each<[FamilyId, string]>([
    ['nz', 'NZS 3104 (from memory)'],
    ['au', 'AS 1379:2007 4.2 (from memory)'],
  ])('%s: 90 min, %s', (family) => {
    expect([verdictOf(family, 'age', aged(90)), verdictOf(family, 'age', aged(90.5))]).toEqual([
      'pass',
      'fail',
    ])
  })
  it.each<[FamilyId, string]>([
    [
      'us',
      'ASTM C94/C94M-21 6.1.10 (American Concrete Pumping Association, June 2022): no default since 2021',
    ],
    ['eu', 'EN 206 leaves it to the national annex (from memory)'],
  ])('%s: no limit of its own, %s', (family) => {
    expect(verdictOf(family, 'age', aged(10))).toBe('unknown')
    expect([verdictOf(family, 'age', aged(120), 120), verdictOf(family, 'age', aged(121), 120)]).toEqual([
      'pass',
      'fail',
    ])
  })
})

describe('slump of a load against the target on its ticket', () => {
  it.each<[FamilyId, 'spot' | 'composite', number, number, number, string]>([
    ['nz', 'spot', 100, 70, 130, 'NZS 3104 Table 2.6, snatch sample (seen)'],
    ['nz', 'composite', 100, 80, 120, 'NZS 3104 Table 2.6, representative sample (seen)'],
    ['eu', 'spot', 100, 50, 150, 'Concrete Society, consistence tolerance, spot sample (seen)'],
    ['eu', 'composite', 100, 70, 130, 'EN 206 Table 23 (from memory)'],
    ['us', 'spot', 100, 75, 125, 'ASTM C94, over 50 to 100 mm ±25 (from memory)'],
    ['au', 'spot', 100, 80, 120, 'AS 1379 Table 5.1, over 80 to 110 mm ±20 (from memory)'],
  ])('%s, %s, target %d: %d to %d, %s', (family, slumpSample, slumpTarget, low, high) => {
    const judged = (slump: number) => verdictOf(family, 'slump', { slump, slumpTarget, slumpSample })
    expect([judged(low - 1), judged(low), judged(high), judged(high + 1)]).toEqual([
      'fail',
      'pass',
      'pass',
      'fail',
    ])
  })
})

describe('mixing again after an addition on site', () => {
  it('us: 30 turns at mixing speed, ASTM C94/C94M-21 12.7 (from memory)', () => {
    const judged = (remixTurns: number) => verdictOf('us', 'remix', { waterAdded: 5, remixTurns })
    expect([judged(29), judged(30)]).toEqual(['fail', 'pass'])
  })
  it.each([
    [3, 5],
    [5, 5],
    [6.5, 6.5],
  ])('eu: %d m³ ask for %d min, EN 206:2013+A2 7.5 (from memory)', (volume, least) => {
    const judged = (remixMinutes: number) =>
      verdictOf('eu', 'remix', { volume, admixtureAdded: 1, remixMinutes })
    expect([judged(least - 0.1), judged(least)]).toEqual(['fail', 'pass'])
  })
  it.each<FamilyId>(['nz', 'au'])('%s: no confirmed value', (family) => {
    expect(verdictOf(family, 'remix', { waterAdded: 5, remixTurns: 100, remixMinutes: 20 })).toBe('unknown')
  })
})

describe('volume under the order', () => {
  it('nz: 2 % less than ordered may come, NZS 3104 (Guide to Concrete Construction, ch. 7, seen)', () => {
    const judged = (volume: number) => verdictOf('nz', 'volume', { ordered: 6, volume })
    expect([judged(5.87), judged(5.88)]).toEqual(['fail', 'pass'])
  })
})

describe('time that a surface may wait (common practice, no source)', () => {
  it('is never longer than an hour, and half of plain work where the face is seen', () => {
    for (const air of [-5, 14.9, 15, 25, 25.1, 40])
      expect(jointMinutes({ air, visible: true }) * 2).toBe(jointMinutes({ air, visible: false }))
    // UK highways specification clause 1710.3 (Concrete Society, time between layers, seen): 30 min unless a joint is formed.
    expect(jointMinutes({ air: 10, visible: true })).toBeLessThanOrEqual(30)
  })
})
