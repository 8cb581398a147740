import { describe, expect, it } from 'vitest'
import { InputError } from '../working/issue.ts'
import { parseYard } from './yard.ts'

function refused(mix: object): readonly string[] {
  const yard = { format: 'castwright.yard/1', name: 'Y', code: 'eu', timezone: 'UTC' }
  try {
    parseYard({ ...yard, mixes: [{ mark: 'M', strength: 40, ...mix }] })
    return []
  } catch (error) {
    if (error instanceof InputError) return error.issues.map(({ path }) => path)
    throw error
  }
}

describe('a mix of the yard', () => {
  it.each<[string, object]>([
    // Minutes that end on no day of any calendar, and curves that are no number.
    ['mixes[0].dischargeMinutes', { dischargeMinutes: 1e300 }],
    ['mixes[0].curve.rate', { curve: { form: 'hyperbolic', ultimate: 55, rate: 1e308, offset: 4 } }],
    ['mixes[0].curve.ultimate', { curve: { form: 'exponential', ultimate: 1e308, tau: 14, shape: 0.9 } }],
    ['mixes[0].curve.mean28', { curve: { form: 'ec2', mean28: 1e308, s: 0.2 } }],
  ])('is refused by its field where a number would overflow: %s', (path, mix) => {
    expect(refused(mix)).toEqual([path])
  })

  it('is taken with numbers of concrete', () => {
    expect(refused({ dischargeMinutes: 90, curve: { form: 'ec2', mean28: 48, s: 0.2 } })).toEqual([])
  })
})
