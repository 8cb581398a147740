import { describe, expect, it } from 'vitest'
import { readFields } from './surface-entry.tsx'

const EMPTY = { surface: '', air: '', humidity: '', wind: '', print: '', resistance: '', passes: '' }

describe('readings typed at the panel', () => {
  it('takes what is given, comma or point, and leaves the rest out', () => {
    expect(readFields({ ...EMPTY, surface: '12,5', humidity: '70', print: '0' })).toEqual({
      values: { surface: 12.5, humidity: 70, print: 0 },
      faults: {},
    })
  })

  it.each([
    ['humidity', '120', 'Found 120, expected 0 to 100 %.'],
    ['surface', 'warm', 'Found warm, expected -10 to 60 °C.'],
    ['surface', '185', 'Found 185, expected -10 to 60 °C.'],
    ['wind', '-3', 'Found -3, expected 0 to 144 km/h.'],
    ['passes', '2.5', 'Found 2.5, expected 1 to 8, a whole number.'],
    ['resistance', '0', 'Found 0, expected 0.1 to 50 MPa.'],
  ] as const)('refuses %s of %s and says what was expected', (field, typed, fault) => {
    expect(readFields({ ...EMPTY, [field]: typed }).faults).toEqual({ [field]: fault })
  })

  it('refuses nothing at all', () => {
    expect(readFields(EMPTY).faults).toEqual({ all: 'Enter at least one reading.' })
  })
})
