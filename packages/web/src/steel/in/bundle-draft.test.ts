import { EXAMPLE_BUNDLE } from '@castwright/engine/steel/incoming'
import { describe, expect, it } from 'vitest'
import { bundleText, EMPTY_BUNDLE, readBundle } from './bundle-draft.ts'

describe('a bundle as typed', () => {
  it('comes back the same when it is read again', () => {
    const tests = [{ reference: 'L-7', yield: 540, strength: 650, uniform: 11 }]
    const bundle = { ...EXAMPLE_BUNDLE, galvanised: false, tests }
    expect(readBundle(bundleText('B-1', bundle))).toEqual({ bundle, faults: {} })
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
