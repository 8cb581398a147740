import { type Bundle, EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bundleText, EMPTY_BUNDLE, readBundle } from './bundle-draft.ts'

describe('a bundle as typed', () => {
  it('comes back the same when it is read again', () => {
    const tests = [{ reference: 'L-7', yield: 540, strength: 650, uniform: 11 }]
    const bundle = { ...EXAMPLE_BUNDLE, galvanised: false, tests }
    expect(readBundle(bundleText('B-1', bundle))).toEqual({ bundle, faults: {} })
  })

  it('loses nothing of a bundle that another program recorded', () => {
    const word = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9 ./-]{0,8}[A-Za-z0-9]$/)
    const mm = fc.integer({ min: 1, max: 60_000 })
    const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined })
    const percent = maybe(fc.integer({ min: 1, max: 60 }))
    const test = fc.record({
      reference: word,
      yield: mm,
      strength: mm,
      uniform: percent,
      elongation: percent,
    })
    const docket = fc.record({ number: word, length: maybe(mm), count: maybe(mm), heat: maybe(word) })
    const certificate = fc.record({ number: word, heat: maybe(word), diameter: maybe(mm) })
    const bundles = fc.record({
      docket: maybe(fc.option(docket)),
      certificate: maybe(fc.option(certificate)),
      tests: maybe(fc.array(test, { minLength: 1, maxLength: 3 })),
      weighed: maybe(fc.array(fc.record({ length: mm, mass: mm }), { minLength: 1, maxLength: 3 })),
    })
    fc.assert(
      fc.property(bundles, (rest) => {
        const bundle = { ordered: { diameter: 12, grade: '500E' }, ...rest } as Bundle
        const back = readBundle(bundleText('B-1', bundle))
        expect(back.faults).toEqual({})
        expect(JSON.stringify(sorted(back.bundle))).toBe(JSON.stringify(sorted(bundle)))
      }),
    )
  })

  it('refuses a test line with a word too many', () => {
    const typed = { ...EMPTY_BUNDLE, diameter: '12', grade: '500E' }
    for (const tests of ['L 7 540 650 11', 'L-7 540 650 11 9 8', 'L-7 - 650', '"L 7 540 650']) {
      expect(readBundle({ ...typed, tests }).faults.tests).toBeDefined()
    }
    const { bundle } = readBundle({ ...typed, tests: '"L 7" 540 650 - 12' })
    expect(bundle?.tests).toEqual([{ reference: 'L 7', yield: 540, strength: 650, elongation: 12 }])
  })

  it('is nothing before size and grade are there', () => {
    expect(readBundle({ ...EMPTY_BUNDLE, diameter: '12' }).bundle).toBeNull()
  })

  it('names the field that cannot be read and does not guess it', () => {
    const { bundle, faults } = readBundle({
      ...EMPTY_BUNDLE,
      diameter: '12',
      grade: '500E',
      weighed: '1000',
      lengths: '6000 about',
      barsRead: '2.5',
      tests: 'L-7 540',
      docket: 'came',
    })
    expect(Object.keys(faults).sort()).toEqual(['barsRead', 'docketNumber', 'lengths', 'tests', 'weighed'])
    expect(bundle).toEqual({ ordered: { diameter: 12, grade: '500E' } })
  })

  it('takes a comma for a point, and no docket as said', () => {
    const { bundle } = readBundle({
      ...EMPTY_BUNDLE,
      diameter: '12',
      grade: '500E',
      weighed: '1000 0,89',
      docket: 'none',
    })
    expect(bundle).toEqual({
      ordered: { diameter: 12, grade: '500E' },
      docket: null,
      weighed: [{ length: 1000, mass: 0.89 }],
    })
  })
})

/** Fields in one order, those left out dropped. */
function sorted(value: unknown): unknown {
  if (value === null || typeof value !== 'object') return value
  if (Array.isArray(value)) return value.map(sorted)
  const fields = Object.entries(value).filter(([, field]) => field !== undefined)
  return Object.fromEntries(
    fields.sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, field]) => [key, sorted(field)]),
  )
}
