import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { codeFamily, type FamilyId } from '../../codes/index.ts'
import { replay } from '../../working/replay.ts'
import { decided, GOOD_LOAD, loadOf } from './example-load.ts'
import type { DocketWords, Load } from './load.ts'
import type { LoadRow } from './load-row.ts'
import { type LoadsInput, loadRows } from './load-rows.ts'
import type { PourOrder } from './one-load.ts'

const ORDER: PourOrder = {
  mix: 'M40',
  strength: 40,
  slump: [80, 120],
  dischargeMinutes: null,
  net: 2.9,
  mixes: [
    { mark: 'M40', strength: 40 },
    { mark: 'M50', strength: 50 },
  ],
}
const au = codeFamily('au')

function rows(loads: readonly Load[], change: Partial<LoadsInput> = {}): LoadRow[] {
  const air = () => ({ celsius: 18, from: 'logged' as const })
  return loadRows({ loads, order: ORDER, family: au, air, ...change })
}

function row(id: string, loads: readonly Load[], change: Partial<LoadsInput> = {}): LoadRow {
  const found = rows(loads, change).find((each) => each.id === id)
  if (found === undefined) throw new Error(`no row ${id}`)
  return found
}

const one = (change: Partial<DocketWords> = {}) => loadOf({ ...GOOD_LOAD, ...change })
const verdict = (key: string, words: Partial<DocketWords>, change: Partial<LoadsInput> = {}) =>
  row(`load:7001:${key}`, [one(words)], change).verdict

describe('one load', () => {
  it('passes where all is in order', () => {
    const found = rows([one()])
    expect(found.map(({ id, verdict: each }) => [id, each])).toEqual([
      ['load:7001:mix', 'pass'],
      ['load:7001:age', 'pass'],
      ['load:7001:slump', 'pass'],
      ['load:7001:temperature', 'pass'],
      ['load:7001:water', 'pass'],
      ['loads:volume', 'pass'],
    ])
    expect(found.every(({ what, rests }) => what !== '' && rests.includes('d-7001'))).toBe(true)
  })

  it('says nothing where there is no docket', () => {
    expect(rows([])).toEqual([])
  })

  type Case = Partial<PourOrder> & { readonly by?: FamilyId }
  const [nz, eu, us]: Case[] = [{ by: 'nz' }, { by: 'eu' }, { by: 'us' }]
  const caseOf = ({ by = 'au', ...order }: Case = {}): Partial<LoadsInput> => ({
    family: codeFamily(by),
    order: { ...ORDER, ...order },
  })
  it.each<[string, Partial<DocketWords>, Case | undefined, string]>([
    ['age', { discharged: '2026-06-01T13:30:00.000Z' }, {}, 'pass'],
    ['age', { discharged: '2026-06-01T13:31:00.000Z' }, {}, 'fail'],
    ['age', { discharged: '2026-06-01T13:15:00.000Z' }, { dischargeMinutes: 60 }, 'fail'],
    ['age', { discharged: undefined }, {}, 'unknown'],
    ['age', { batched: undefined }, {}, 'unknown'],
    ['age', { discharged: '2026-06-01T11:00:00.000Z' }, {}, 'unknown'],
    // Arrived after it was poured, and begun after it had ended: one of the times is a slip.
    ['age', { arrived: '2026-06-01T13:05:00.000Z' }, {}, 'unknown'],
    ['age', { began: '2026-06-01T12:51:00.000Z', arrived: undefined }, {}, 'unknown'],
    ['age', { arrived: '2026-06-01T12:00:00.000Z', began: '2026-06-01T12:00:00.000Z' }, {}, 'pass'],
    ['age', {}, us, 'unknown'],
    ['age', {}, eu, 'unknown'],
    ['age', {}, { ...us, dischargeMinutes: 90 }, 'pass'],
    ['slump', { slump: 80 }, {}, 'pass'],
    ['slump', { slump: 79 }, {}, 'fail'],
    ['slump', { slump: 120 }, {}, 'pass'],
    ['slump', { slump: 121 }, {}, 'fail'],
    ['slump', { slump: undefined }, {}, 'unknown'],
    ['slump', {}, { slump: null }, 'unknown'],
    ['slump', {}, { slump: [120, 80] }, 'unknown'],
    ['slump', { slump: 130, slumpTarget: 100 }, { ...nz, slump: null }, 'pass'],
    ['slump', { slump: 131, slumpTarget: 100 }, { ...nz, slump: null }, 'fail'],
    ['slump', { slump: 121, slumpTarget: 100, slumpSample: 'composite' }, { ...nz, slump: null }, 'fail'],
    ['temperature', { temperature: 5 }, {}, 'pass'],
    ['temperature', { temperature: 4.9 }, {}, 'fail'],
    ['temperature', { temperature: 35.1 }, {}, 'fail'],
    ['temperature', { temperature: undefined }, {}, 'unknown'],
    ['temperature', {}, nz, 'unknown'],
    ['temperature', { temperature: 40 }, eu, 'pass'],
    ['water', { waterAdded: 10, waterAllowed: 15, waterAfterDischarge: false }, {}, 'pass'],
    ['water', { waterAdded: 16, waterAllowed: 15, waterAfterDischarge: false }, {}, 'fail'],
    ['water', { waterAdded: 10, waterAllowed: 15, waterAfterDischarge: true }, {}, 'fail'],
    ['water', { waterAdded: 10, waterAfterDischarge: false }, {}, 'unknown'],
    ['water', { waterAdded: 10, waterAllowed: 15 }, {}, 'unknown'],
    ['water', { waterAdded: undefined }, {}, 'unknown'],
    ['mix', { mix: 'M50' }, {}, 'fail'],
    ['mix', { mix: undefined }, {}, 'unknown'],
    ['mix', {}, { mix: null }, 'unknown'],
    ['mix', {}, { strength: 45 }, 'fail'],
    ['mix', {}, { mixes: [] }, 'unknown'],
    ['volume', { volume: undefined }, {}, 'unknown'],
    ['volume', { ordered: 3 }, {}, 'pass'],
    ['volume', { ordered: 3.01 }, {}, 'fail'],
    ['volume', { ordered: 3.06 }, nz, 'pass'],
    ['volume', { ordered: 3.07 }, nz, 'fail'],
    ['remix', { waterAdded: 5, remixTurns: 30 }, us, 'pass'],
    ['remix', { waterAdded: 5, remixTurns: 29 }, us, 'fail'],
    ['remix', { waterAdded: 5, remixMinutes: 9 }, us, 'unknown'],
    ['remix', { admixtureAdded: 2, remixMinutes: 5 }, eu, 'pass'],
    ['remix', { admixtureAdded: 2, remixMinutes: 4.9 }, eu, 'fail'],
    ['remix', { admixtureAdded: 2, volume: 7, remixMinutes: 6 }, eu, 'fail'],
    ['remix', { admixtureAdded: 2, volume: undefined, remixMinutes: 9 }, eu, 'unknown'],
    ['remix', { admixtureAdded: 2, remixMinutes: 9, remixTurns: 60 }, nz, 'unknown'],
  ])('%s of %j: with %j: %s', (key, words, change, expected) => {
    expect(verdict(key, words, caseOf(change))).toBe(expected)
  })

  it('names what is missing, and no limit where none is confirmed', () => {
    const bare = rows([loadOf({ number: '7001' })], caseOf(us))
    for (const { id, verdict: each, unknown } of bare.filter(({ id: at }) => at.startsWith('load:'))) {
      expect([id, each]).toEqual([id, 'unknown'])
      expect(unknown.length).toBeGreaterThan(0)
    }
    expect(bare[0]?.unknown).toContain('mix on the docket')
  })

  it('lists a spot sample as assumed where nobody said how it was taken', () => {
    const taken = row('load:7001:slump', [one({ slumpTarget: 100 })], caseOf({ slump: null }))
    expect(taken.assumed.map(({ field }) => field)).toEqual(['kind of slump sample'])
    expect(row('load:7001:slump', [one()]).assumed).toEqual([])
  })

  it('shows the working of the minutes', () => {
    const { working } = row(
      'load:7001:remix',
      [one({ admixtureAdded: 1, volume: 7, remixMinutes: 7 })],
      caseOf(eu),
    )
    expect(working.map((step) => [replay(step), step.result])).toEqual([[7, 7]])
  })

  it('is not known while two recordings differ, whatever they say', () => {
    const twice = loadOf(GOOD_LOAD, { differs: ['slump'] })
    const found = row('load:7001:twice', [twice])
    expect([found.verdict, found.unknown]).toEqual(['unknown', ['slump: which of the two recordings holds']])
  })
})

describe('loads of one pour', () => {
  const second = (change: Partial<DocketWords> = {}, over: Partial<Load> = {}) =>
    loadOf(
      {
        ...GOOD_LOAD,
        number: '7002',
        batched: '2026-06-01T12:20:00.000Z',
        arrived: '2026-06-01T12:50:00.000Z',
        began: '2026-06-01T13:00:00.000Z',
        discharged: '2026-06-01T13:15:00.000Z',
        ...change,
      },
      over,
    )

  it('waits no longer than the air allows, whichever docket came first', () => {
    const joint = (celsius: number, change: Partial<DocketWords> = {}) =>
      row('load:7002:joint', [second(change), one()], { air: () => ({ celsius, from: 'forecast' }) })
    expect([joint(18).verdict, joint(18).demand, joint(18).limit]).toEqual(['pass', 10, 22.5])
    expect(joint(18, { began: '2026-06-01T13:13:00.000Z' }).verdict).toBe('fail')
    expect(joint(26, { began: '2026-06-01T13:06:00.000Z' }).verdict).toBe('fail')
    expect(joint(10, { began: '2026-06-01T13:20:00.000Z' }).verdict).toBe('pass')
    expect(joint(18, { began: undefined }).unknown).toEqual(['begin of discharge'])
    expect(joint(18, { began: '2026-06-01T12:45:00.000Z' }).demand).toBe(0)
    expect(joint(18).note).toContain('forecast')
  })

  it('is not known without air or without the end of the load before', () => {
    expect(row('load:7002:joint', [one(), second()], { air: () => null }).unknown).toEqual([
      'air temperature as load 7001 ended: measured, logged or forecast',
    ])
    expect(row('load:7002:joint', [one({ discharged: undefined }), second()]).unknown).toEqual([
      'end of discharge of load 7001',
    ])
  })

  it('adds up what came, and says what is short before the last truck leaves', () => {
    const order = { ...ORDER, net: 6.4 }
    const short = row('loads:volume', [one(), second()], { order })
    expect([short.verdict, short.demand, short.limit]).toEqual(['fail', 6, 6.4])
    expect(short.note).toContain('0.40 m³ short')
    expect(row('loads:volume', [one(), second({ volume: 3.4 })], { order }).verdict).toBe('pass')
    expect(row('loads:volume', [one(), second({ volume: undefined })], { order }).unknown).toEqual([
      'volume of load 7002, m³',
    ])
    expect(row('loads:volume', [one({ volume: 7 }), second({ volume: undefined })], { order }).verdict).toBe(
      'pass',
    )
  })

  it('counts only what went into this panel', () => {
    expect(row('loads:volume', [one({ volume: 6, used: 2.8 })]).demand).toBe(2.8)
  })

  it('never takes a second mix without an engineer', () => {
    const mixed = row('loads:one-mix', [one(), second({ mix: 'M50' })])
    expect([mixed.verdict, mixed.deciders]).toEqual(['fail', ['engineer']])
    expect(row('loads:one-mix', [one(), second()]).verdict).toBe('pass')
    expect(row('loads:one-mix', [one(), second({ mix: undefined })]).verdict).toBe('unknown')
    expect(rows([one()]).some(({ id }) => id === 'loads:one-mix')).toBe(false)
  })

  it('leaves a load out that was sent back, and the next follows the one before it', () => {
    const back = second({ mix: 'M50', slump: 200 }, { decision: decided('send-back') })
    const third = second({ number: '7003', began: '2026-06-01T13:12:00.000Z' })
    const found = rows([one(), back, third])
    expect(found.filter(({ id }) => id.startsWith('load:7002')).map(({ id }) => id)).toEqual([
      'load:7002:back',
    ])
    expect(found.find(({ id }) => id === 'loads:volume')).toMatchObject({ demand: 6 })
    expect(found.find(({ id }) => id === 'load:7003:joint')).toMatchObject({ demand: 22 })
    expect(found.find(({ id }) => id === 'loads:one-mix')?.verdict).toBe('pass')
    expect(found.find(({ id }) => id === 'loads:volume')?.since).toBe('2026-06-01T13:00:00.000Z')
  })

  it('gives the same whatever order the dockets come in, and no row without a verdict it can say', () => {
    const time = fc
      .integer({ min: 0, max: 200 })
      .map((minutes) => new Date(Date.parse('2026-06-01T12:00:00.000Z') + minutes * 60_000).toISOString())
    const maybe = <T>(arb: fc.Arbitrary<T>) => fc.option(arb, { nil: undefined })
    const words = fc.record({
      mix: maybe(fc.constantFrom('M40', 'M50', 'X')),
      volume: maybe(fc.double({ min: 0.1, max: 10, noNaN: true })),
      batched: maybe(time),
      began: maybe(time),
      discharged: maybe(time),
      slump: maybe(fc.integer({ min: 0, max: 250 })),
      temperature: maybe(fc.integer({ min: -5, max: 45 })),
      waterAdded: maybe(fc.integer({ min: 0, max: 40 })),
      waterAllowed: maybe(fc.integer({ min: 0, max: 40 })),
    })
    fc.assert(
      fc.property(
        fc.array(words, { maxLength: 5 }),
        fc.constantFrom(...(['nz', 'au', 'eu', 'us'] as const)),
        fc.boolean(),
        (all, family, back) => {
          const loads = all.map((each, at) =>
            loadOf(
              { number: String(at), ...each },
              back && at === 1 ? { decision: decided('send-back') } : {},
            ),
          )
          const input = { family: codeFamily(family) }
          const found = rows(loads, input)
          expect(rows([...loads].reverse(), input)).toEqual(found)
          for (const { verdict: each, unknown, demand, limit } of found) {
            if (each === 'unknown') expect(unknown.length).toBeGreaterThan(0)
            for (const figure of [demand, limit])
              if (typeof figure === 'number') expect(Number.isFinite(figure)).toBe(true)
          }
          expect(new Set(found.map(({ id }) => id)).size).toBe(found.length)
        },
      ),
    )
  })
})
